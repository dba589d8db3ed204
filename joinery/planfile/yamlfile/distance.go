package yamlfile

import "fencecard/joinery/pattern"

var (
	setbackText = pattern.New(`(?i)^(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	centredText = pattern.New(`(?i)^(?:centred|centered|centre|center)(?:\s+from\s+(?:the\s+)?(\S+))?$`)
)

// FromSide takes a distance from a side apart: "1/2 from front".
func FromSide(text string) (distance, side string, ok bool) {
	m := setbackText.FindStringSubmatch(text)
	if m == nil {
		return "", "", false
	}
	return m[1], m[2], true
}

// IsCentred reports whether a text says that something is centred, and from which
// side its distance is then told; "" for either.
func IsCentred(text string) (side string, ok bool) {
	m := centredText.FindStringSubmatch(text)
	if m == nil {
		return "", false
	}
	return m[1], true
}

// saysWhere reports whether a text is a distance from a side, or says centred.
func saysWhere(text string) bool {
	_, _, from := FromSide(text)
	_, centred := IsCentred(text)
	return from || centred
}
