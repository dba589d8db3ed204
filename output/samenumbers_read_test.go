package output_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/internal/render"
)

var (
	textSetup  = regexp.MustCompile(`(?m)^SETUP (\d+) `)
	textFence  = regexp.MustCompile(`near edge (.+?)   centre (.+?)   far edge (.+)`)
	textHeight = regexp.MustCompile(`(\d+)\) (-?\d+(?: \d+/\d+|/\d+|\.\d+)?[+-]?)`)
	textPair   = regexp.MustCompile(`(?m)^(\d+[A-Z]+) `)
	textMark   = regexp.MustCompile(`\b(START|STOP) (-?\d[^A-Za-z]*?) (?:MARK|BACK STOP|FRONT STOP|PENCIL)`)
	textBehind = regexp.MustCompile(`\bBACK STOP (-?\d[^A-Za-z]*?)\s+RIGHT of`)
	textRun    = regexp.MustCompile(`(?s)^(\d+\.\d+) +.*?, (\d+) pieces?: .*?,?\s+heights?\s+([0-9to, \n]+?)\s*\n\s+(\w+) down,\s+(\w+)\s+to\s+the\s+fence,\s+(\w+)\s+leads`)
	textRunAt  = regexp.MustCompile(`(?m)^\d+\.\d+ `)
)

// readText reads what the screen's text says.
func readText(t *testing.T, text string) numbers {
	n := numbers{}
	starts := textSetup.FindAllStringSubmatchIndex(text, -1)
	for i, at := range starts {
		end := len(text)
		if i+1 < len(starts) {
			end = starts[i+1][0]
		}
		part, number := text[at[0]:end], text[at[2]:at[3]]
		fence := textFence.FindStringSubmatch(part)
		require.NotNil(t, fence, part)
		n.put(number+" near", fence[1])
		n.put(number+" centre", fence[2])
		n.put(number+" far", fence[3])
		_, heights, _ := strings.Cut(part, "\nheights ")
		heights, _, _ = strings.Cut(heights, "\nWARNING")
		for _, h := range textHeight.FindAllStringSubmatch(heights, -1) {
			n.put(number+" height "+h[1], h[2])
		}
		blocks := textPair.FindAllStringSubmatchIndex(part, -1)
		for k, p := range blocks {
			end := len(part)
			if k+1 < len(blocks) {
				end = blocks[k+1][0]
			}
			for _, m := range textMark.FindAllStringSubmatch(part[p[0]:end], -1) {
				n.put(part[p[2]:p[3]]+" "+m[1], m[2])
			}
			for _, m := range textBehind.FindAllStringSubmatch(part[p[0]:end], -1) {
				n.put(part[p[2]:p[3]]+" BACK STOP", m[1])
			}
		}
		runs := textRunAt.FindAllStringIndex(part, -1)
		for k, p := range runs {
			end := len(part)
			if k+1 < len(runs) {
				end = runs[k+1][0]
			}
			r := textRun.FindStringSubmatch(part[p[0]:end])
			if !assert.NotNil(t, r, part[p[0]:end]) {
				continue
			}
			n.put(r[1]+" count", r[2])
			n.put(r[1]+" heights", spelt(r[3]))
			n.put(r[1]+" orders", strings.Join(r[4:7], " "))
		}
	}
	return n
}

// spelt writes "1 to 3, 5" out: "1 2 3 5".
func spelt(ranges string) string {
	var all []string
	for part := range strings.SplitSeq(strings.ReplaceAll(ranges, "\n", " "), ",") {
		from, to, ok := strings.Cut(part, "to")
		a, _ := strconv.Atoi(strings.TrimSpace(from))
		b := a
		if ok {
			b, _ = strconv.Atoi(strings.TrimSpace(to))
		}
		for ; a <= b; a++ {
			all = append(all, fmt.Sprint(a))
		}
	}
	return strings.Join(all, " ")
}

var (
	figure     = regexp.MustCompile(`^[-−]?\d[0-9/. ]*[+−-]?$`)
	pieceMany  = regexp.MustCompile(`× ?(\d+)$`)
	ordinal    = regexp.MustCompile(`^\d+$`)
	pairLetter = regexp.MustCompile(`^[A-HJ-NP-Z]{1,2}$`)
	sideWord   = regexp.MustCompile(`^[A-Z]{3,}$`)
)

// readSheets reads the words of setup sheets in the order they are set. A run
// is known by its number and the first word of its piece: 9.5 is a height as well.
func readSheets(words []string, piece map[string]string) numbers {
	n := numbers{}
	number, letter := "", ""
	var open []string // runs whose orders are still to come
	for i, w := range words {
		next := func(k int) string {
			if i+k < len(words) && i+k >= 0 {
				return words[i+k]
			}
			return ""
		}
		switch {
		case w == "SETUP" && ordinal.MatchString(next(1)):
			number = next(1)
		case w == "to centre":
			n.put(number+" near", next(-1))
			n.put(number+" centre", next(1))
		case w == "to far edge":
			n.put(number+" far", next(1))
		case w == "HEIGHTS":
			to := 0 // words on what the heights are measured to
			for to < 6 && next(to+1) != "1" {
				to++
			}
			for k := 1; next(to+2*k-1) == fmt.Sprint(k); k++ {
				n.put(fmt.Sprintf("%s height %d", number, k), next(to+2*k))
			}
		case pairLetter.MatchString(w):
			letter = w
		case (w == "START" || w == "STOP" || w == "BACK STOP") && figure.MatchString(next(1)):
			n.put(number+letter+" "+w, next(1))
		case piece[w] != "" && strings.HasPrefix(next(1), strings.Fields(piece[w])[0]):
			count := "1"
			for k := 1; k < 4; k++ {
				if m := pieceMany.FindStringSubmatch(next(k)); m != nil && piece[next(k)] == "" {
					count = m[1]
					break
				}
				if ordinal.MatchString(next(k)) || piece[next(k)] != "" {
					break
				}
			}
			n.put(w+" count", count)
			var ticks []string
			k := 2
			for k < 6 && (!ordinal.MatchString(next(k)) || strings.HasSuffix(next(k-1), "of")) && piece[next(k)] == "" {
				k++
			}
			for ; ordinal.MatchString(next(k)); k++ {
				ticks = append(ticks, next(k))
			}
			n.put(w+" heights", strings.Join(ticks, " "))
			open = append(open, w)
		case len(open) > 0 && sideWord.MatchString(w) && sideWord.MatchString(next(1)) && sideWord.MatchString(next(2)) && w != "WARNING":
			for _, r := range open {
				n.put(r+" orders", strings.Join([]string{w, next(1), next(2)}, " "))
			}
			open = nil
		}
	}
	return n
}

// wordsOf are the pieces of text of a document, built numbers as one.
func wordsOf(doc *render.Document) []string {
	var words []string
	for page := range doc.Pages() {
		for _, p := range doc.Pieces(page) {
			if w := strings.TrimSpace(p.Text); w != "" {
				words = append(words, w)
			}
		}
	}
	return words
}

// wordsOfSVG are the texts of a drawing, a group with a label as one.
func wordsOfSVG(t *testing.T, drawing []byte) []string {
	var words []string
	in := xml.NewDecoder(bytes.NewReader(drawing))
	labelled := 0
	for {
		token, err := in.Token()
		if err != nil {
			return words
		}
		switch e := token.(type) {
		case xml.StartElement:
			if labelled > 0 {
				labelled++
			}
			for _, a := range e.Attr {
				if e.Name.Local == "g" && a.Name.Local == "aria-label" {
					words, labelled = append(words, a.Value), 1
				}
			}
			if e.Name.Local == "text" && labelled == 0 {
				var text string
				require.NoError(t, in.DecodeElement(&text, &e))
				if text = strings.TrimSpace(text); text != "" {
					words = append(words, text)
				}
			}
		case xml.EndElement:
			labelled = max(0, labelled-1)
		}
	}
}

var stripMark = regexp.MustCompile(`\|(START|STOP|BACK STOP)\|((?:\d+[A-Z]+[, |]*)+)\|(?:(?:BACK|FRONT)[ |]STOP[ |]for[ |])?(leading[ |]end|tail[ |]end|layout[ |]line)[ |]([^|]+)`)

// checkStrips finds the marks of every pair on the strips, and compares each
// with the JSON's measure for the end of the work that the strip names.
func checkStrips(t *testing.T, words []string, j *jsonDeck, what string) (n int) {
	marks := map[string]*jsonMark{}
	for _, u := range j.Setups {
		for _, m := range u.Marks {
			marks[fmt.Sprint(u.Number, m.Letter)+" START"], marks[fmt.Sprint(u.Number, m.Letter)+" STOP"] = m.Start, m.Stop
		}
	}
	found := map[string]bool{}
	for _, m := range stripMark.FindAllStringSubmatch("|"+strings.Join(words, "|"), -1) {
		for _, pair := range strings.FieldsFunc(m[2], func(r rune) bool { return strings.ContainsRune(", |", r) }) {
			name := pair + " " + strings.TrimPrefix(m[1], "BACK ")
			if m[1] == "BACK STOP" {
				name = pair + " START"
			} else {
				found[name] = true
			}
			if mark := marks[name]; assert.NotNil(t, mark, "%s: strip %s", what, name) {
				want := mark.by(map[string]string{"le": "lead", "ta": "tail", "la": "line"}[m[3][:2]])
				assert.Equal(t, want, strings.ReplaceAll(m[4], "−", "-"), "%s: strip %s", what, m[0])
				n++
			}
		}
	}
	for name, m := range marks {
		assert.True(t, m == nil || found[name], "%s: no %s on the strips", what, name)
	}
	return n
}
