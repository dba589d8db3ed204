package planfile

import "fencecard/joinery/pattern"

var (
	setbackText = pattern.New(`(?i)^(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	centredText = pattern.New(`(?i)^(?:centred|centered|centre|center)(?:\s+from\s+(?:the\s+)?(\S+))?$`)
)

// fromSide takes a distance from a side apart: "1/2 from front".
func fromSide(text string) (distance, side string, ok bool) {
	m := setbackText.FindStringSubmatch(text)
	if m == nil {
		return "", "", false
	}
	return m[1], m[2], true
}

// isCentred reports whether a text says that something is centred, and from which
// side its distance is then told; "" for either.
func isCentred(text string) (side string, ok bool) {
	m := centredText.FindStringSubmatch(text)
	if m == nil {
		return "", false
	}
	return m[1], true
}

// saysWhere reports whether a text is a distance from a side, or says centred.
func saysWhere(text string) bool {
	_, _, from := fromSide(text)
	_, centred := isCentred(text)
	return from || centred
}
