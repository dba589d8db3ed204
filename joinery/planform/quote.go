package planform

import (
	"strings"

	"fencecard/joinery/planfile/keys"
)

// encoded is a value as it stands in a plan. In braces, commas and brackets need
// quotes round them. The quotes of what stood there before are kept.
func encoded(text string, shape keys.Shape, flow bool, quote byte) string {
	text = oneLine(text)
	switch shape {
	case keys.Names:
		names := splitNames(text)
		if len(names) == 1 {
			return scalar(names[0], flow, quote)
		}
		for i, name := range names {
			names[i] = scalar(name, true, 0)
		}
		return "[" + strings.Join(names, ", ") + "]"
	case keys.Brackets:
		if strings.HasPrefix(text, "[") {
			return text
		}
	}
	return scalar(text, flow, quote)
}

// scalar is a text with quotes where it needs them or had them.
func scalar(text string, flow bool, quote byte) string {
	if quote != '"' && quote != '\'' {
		if bare(text, flow) {
			return text
		}
		quote = '"'
	}
	// Backslashes and quotes mean something in double quotes, so that a text with
	// one reads better in single ones.
	if quote == '"' && strings.ContainsAny(text, `"\`) {
		quote = '\''
	}
	if quote == '\'' {
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	}
	return `"` + text + `"`
}

// bare reports whether a text of one line reads the same without quotes.
func bare(text string, flow bool) bool {
	if text == "" || text == "<<" || text == "=" || strings.HasPrefix(text, "---") || strings.HasPrefix(text, "...") {
		return false
	}
	if strings.ContainsRune("-?:,[]{}#&*!|>'\"%@`", rune(text[0])) {
		return false
	}
	if strings.Contains(text, ": ") || strings.HasSuffix(text, ":") || strings.Contains(text, " #") {
		return false
	}
	return !flow || !strings.ContainsAny(text, ",[]{}:")
}
