package planform

import (
	"slices"
	"strings"

	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
)

// oneLine brings the blanks of a text together, as the reader of plans does.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// value shows what is written at a key: a text as it reads, several of them with
// commas, and what is neither in braces and brackets.
func value(w *yamlfile.Written, shape keys.Shape) string {
	switch {
	case w == nil || w.Kind == yamlfile.WrittenNothing:
		return ""
	case w.Kind == yamlfile.WrittenText && shape == keys.Names:
		return joinNames([]string{oneLine(w.Text)})
	case w.Kind == yamlfile.WrittenText:
		return oneLine(w.Text)
	case w.Kind == yamlfile.WrittenList && shape != keys.Brackets && onlyTexts(w):
		var texts []string
		for _, item := range w.Items {
			texts = append(texts, oneLine(item.Text))
		}
		if shape == keys.Names {
			return joinNames(texts)
		}
		return strings.Join(texts, ", ")
	}
	return inFlow(w)
}

func onlyTexts(w *yamlfile.Written) bool {
	return len(w.Items) > 0 && !slices.ContainsFunc(w.Items, func(i yamlfile.WrittenItem) bool { return i.Kind != yamlfile.WrittenText })
}

// inFlow writes a value in braces and brackets.
func inFlow(w *yamlfile.Written) string {
	var parts []string
	switch w.Kind {
	case yamlfile.WrittenKeys:
		for _, p := range w.Pairs {
			parts = append(parts, strings.TrimSuffix(inFlow(p.Key)+": "+inFlow(p.Value), " "))
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case yamlfile.WrittenList:
		for _, item := range w.Items {
			parts = append(parts, inFlow(item.Written))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case yamlfile.WrittenText:
		return scalar(oneLine(w.Text), true, 0)
	}
	return ""
}

// joinNames lists names with commas; one that has a comma or begins with a quote
// stands in double quotes, and a quote inside is doubled.
func joinNames(names []string) string {
	var all []string
	for _, name := range names {
		if name == "" || strings.Contains(name, ",") || strings.HasPrefix(name, `"`) {
			name = `"` + strings.ReplaceAll(name, `"`, `""`) + `"`
		}
		all = append(all, name)
	}
	return strings.Join(all, ", ")
}

// splitNames takes such a list apart. What is typed wrongly is taken as it
// stands: nothing is lost.
func splitNames(text string) []string {
	var names []string
	for text = strings.TrimSpace(text); text != ""; {
		name, rest := "", ""
		if inner, quoted := strings.CutPrefix(text, `"`); quoted {
			name, rest = unquote(inner)
			if before, after, more := strings.Cut(rest, ","); more {
				name, rest = name+before, after
			} else {
				name, rest = name+rest, ""
			}
		} else {
			name, rest, _ = strings.Cut(text, ",")
		}
		if name = oneLine(name); name != "" {
			names = append(names, name)
		}
		text = strings.TrimSpace(rest)
	}
	return names
}

// unquote reads up to the closing quote.
func unquote(text string) (name, rest string) {
	var b strings.Builder
	for {
		before, after, closed := strings.Cut(text, `"`)
		b.WriteString(before)
		if !closed || !strings.HasPrefix(after, `"`) {
			return b.String(), after
		}
		b.WriteByte('"')
		text = after[1:]
	}
}
