package output_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/output/deckfile"
	"fencecard/output/internal/render"
	"fencecard/output/sheets"
	"fencecard/setup/deck"
)

// cardDeck is what piece cards say of a deck, as its JSON has it.
type cardDeck struct {
	Setups []struct {
		Number int
		Bit    struct{ Name string }
		Fence  struct {
			Near jsonLength `json:"to_near_edge"`
		}
		Runs []struct {
			Number, Piece, Down, Fence, Leads string
			Count, Card                       int
			Marks                             *string
			Start, Stop                       *jsonMark
			Heights                           []jsonLength
			Nibble                            *struct {
				Passes   int
				DrawBack jsonLength `json:"draw_back"`
			}
		}
	}
	Cards []struct {
		Number int
		Piece  string
		Count  int
		Runs   []string
	}
}

// said are the numbers of the cards: of each run its orders, full depth and
// passes, its pair and marks, what its end is drawn back by, and where the fence
// stands.
func (j *cardDeck) said(c *deck.Deck) numbers {
	n := numbers{}
	run := map[string]*deck.Run{}
	for i := range c.Setups {
		for k := range c.Setups[i].Runs {
			run[c.Setups[i].Runs[k].Number()] = &c.Setups[i].Runs[k]
		}
	}
	blocks := c.Plan.Shop.Stops == joinery.Blocks
	for _, card := range j.Cards {
		n.put(fmt.Sprintf("card %d", card.Number), fmt.Sprintf("%s, make %d", card.Piece, card.Count))
	}
	for _, u := range j.Setups {
		for _, r := range u.Runs {
			at := r.Number
			n.put(at+" card", fmt.Sprint(r.Card))
			n.put(at+" near", u.Fence.Near.Text)
			n.put(at+" depth", r.Heights[len(r.Heights)-1].Text)
			n.put(at+" passes", fmt.Sprint(len(r.Heights)))
			of := run[at]
			var orders []string
			for _, name := range []string{r.Down, r.Fence, r.Leads} {
				side, _ := joinery.ParseSide(name)
				orders = append(orders, strings.ToUpper(of.Shown(side)))
			}
			n.put(at+" orders", strings.Join(orders, " "))
			if r.Marks != nil {
				n.put(at+" pair", *r.Marks)
			}
			for name, mark := range map[string]*jsonMark{"START": r.Start, "STOP": r.Stop} {
				if mark == nil {
					continue
				}
				guide := mark.Guide
				if blocks {
					guide = map[string]string{"START": "tail", "STOP": "lead"}[name]
				}
				n.put(at+" "+name, mark.by(guide)+" "+map[string]string{"lead": "left", "tail": "right", "line": "line"}[guide])
				if name == "START" && guide != "tail" {
					n.put(at+" BACK STOP", mark.TailTrailing.Text)
				}
			}
			if r.Nibble != nil {
				n.put(at+" nibble", fmt.Sprintf("%d, %s", r.Nibble.Passes, r.Nibble.DrawBack.Text))
			}
		}
	}
	return n
}

const aNumber = `([-−]?\d+(?:\.\d+|/\d+| \d+/\d+)?[+−-]?)(?: \([-−\d./ ]+\))?`

var (
	cardHead   = regexp.MustCompile(`^(.+?), make (\d+)$`)
	cardNear   = regexp.MustCompile(`SETUP (\d+): .*?near edge ` + aNumber)
	cardDepth  = regexp.MustCompile(`, to ` + aNumber + `(?: ?, (\d+) passes)?`)
	cardPair   = regexp.MustCompile(`; ([A-HJ-NP-Z]{1,2}): `)
	cardStart  = regexp.MustCompile(`START ` + aNumber + ` (left|right|back stop right|pencil line)`)
	cardStop   = regexp.MustCompile(`[^K] STOP ` + aNumber + ` (left|right|front stop left|pencil line)`)
	cardBack   = regexp.MustCompile(`BACK STOP ` + aNumber + ` (RIGHT|LEFT)`)
	cardNibble = regexp.MustCompile(`(?:• (all but )?([\d., –]+): |• )NIBBLE in (\d+) passes at every height: the end first drawn back ` + aNumber + ` by a spacer`)
	cardPart   = regexp.MustCompile(`, part \d+$`)
)

// readCards reads the words of piece cards in the order they are set, those of one
// piece after the other.
func readCards(words []string, c *deck.Deck) numbers {
	n := numbers{}
	card := map[string]deck.Card{}
	piece := map[string]string{}
	for _, k := range c.Cards() {
		card[fmt.Sprint(k.Number)] = k
		for _, r := range k.Runs {
			piece[r.Number()] = r.Piece.Name
		}
	}
	number, near, foot := "", map[string]string{}, map[string]string{}
	isSetup := func(w string) bool { return strings.HasPrefix(w, "SETUP ") }
	begins := func(i int) bool {
		return i+3 < len(words) && piece[words[i]] != "" && sideWord.MatchString(words[i+1]) && sideWord.MatchString(words[i+2]) && sideWord.MatchString(words[i+3])
	}
	// text joins the words from one on to the next that ends it.
	text := func(i int, ends func(i int) bool) string {
		k := i + 1
		for k < len(words) && !ends(k) {
			k++
		}
		return strings.Join(words[i:k], " ") + " "
	}
	cardBegins := func(i int) bool {
		k, ok := card[words[i]]
		if !ok || i+1 >= len(words) {
			return false
		}
		return strings.HasPrefix(k.Piece.Name, strings.TrimSuffix(cardPart.ReplaceAllString(words[i+1], ""), ","))
	}
	for i, w := range words {
		switch {
		case cardBegins(i):
			number = w
			foot[w] += text(i, cardBegins)
			title := text(i+1, func(k int) bool { return strings.HasPrefix(words[k], "deck") || k > i+4 })
			if _, rest, ok := strings.Cut(title, "make "); ok {
				name := card[w].Piece.Name
				if strings.HasPrefix(title, name) {
					n.put("card "+w, name+", make "+strings.Fields(rest)[0])
				}
			}
		case isSetup(w):
			if m := cardNear.FindStringSubmatch(text(i, func(k int) bool { return words[k] == "DOWN" || begins(k) })); m != nil {
				near[m[1]] = m[2]
			}
		case begins(i):
			says := text(i, func(k int) bool {
				return begins(k) || isSetup(words[k]) || strings.HasPrefix(words[k], "WARNING") || strings.HasPrefix(words[k], "NOTICE") || cardBegins(k) || words[k] == "•"
			})
			n.put(w+" card", number)
			u, _, _ := strings.Cut(w, ".")
			n.put(w+" near", near[u])
			n.put(w+" orders", strings.Join(words[i+1:i+4], " "))
			if m := cardDepth.FindStringSubmatch(says); m != nil {
				n.put(w+" depth", m[1])
				n.put(w+" passes", "1")
				if m[2] != "" {
					n[w+" passes"] = m[2]
				}
			}
			if m := cardPair.FindStringSubmatch(says); m != nil {
				n.put(w+" pair", m[1])
			}
			ways := map[string]string{"left": "left", "front stop left": "left", "right": "right", "back stop right": "right", "pencil line": "line"}
			if m := cardStart.FindStringSubmatch(says); m != nil {
				n.put(w+" START", m[1]+" "+ways[m[2]])
			}
			if m := cardStop.FindStringSubmatch(says); m != nil {
				n.put(w+" STOP", m[1]+" "+ways[m[2]])
			}
			if m := cardBack.FindStringSubmatch(says); m != nil {
				n.put(w+" BACK STOP", map[string]string{"RIGHT": "", "LEFT": "-"}[m[2]]+m[1])
			}
		}
	}
	for number, said := range foot {
		for _, m := range cardNibble.FindAllStringSubmatch(said, -1) {
			listed := spelledRuns(m[2])
			for _, r := range card[number].Runs {
				if in := slices.Contains(listed, r.Number()); m[2] == "" || in != (m[1] != "") {
					n.put(r.Number()+" nibble", m[3]+", "+m[4])
				}
			}
		}
	}
	return n
}

// cardWords are the words of the cards of a deck as they are printed, joined where
// one ends in the middle of what the reader looks for.
func cardWords(t *testing.T, d *deck.Deck) []string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, sheets.PDF(&b, d, sheets.Pages{Only: sheets.OnlyCards}))
	return wordsOf(render.Open(t, b.Bytes()))
}

func jsonOf(t *testing.T, d *deck.Deck) *cardDeck {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, d))
	j := &cardDeck{}
	require.NoError(t, json.Unmarshal(b.Bytes(), j))
	return j
}

// spelledRuns writes "10.1, 3–5, 11.2" out.
func spelledRuns(list string) []string {
	var all []string
	setup := ""
	for _, part := range strings.Split(list, ", ") {
		if u, rest, ok := strings.Cut(part, "."); ok {
			setup, part = u, rest
		}
		from, to, ok := strings.Cut(part, "–")
		if !ok {
			to = from
		}
		var a, b int
		fmt.Sscan(from, &a)
		fmt.Sscan(to[strings.LastIndex(to, ".")+1:], &b)
		for ; a <= b; a++ {
			all = append(all, fmt.Sprintf("%s.%d", setup, a))
		}
	}
	return all
}

// TestCardsSayTheSame reads the printed piece cards of every plan back and compares
// every number of every run with the deck's JSON.
func TestCardsSayTheSame(t *testing.T) {
	plans, compared := allPlans(t), 0
	for name, plan := range plans {
		d := deckOf(t, name, plan)
		want := jsonOf(t, d).said(d)
		same(t, want, readCards(cardWords(t, d), d), name)
		compared += len(want)
	}
	t.Logf("%d numbers of %d plans", compared, len(plans))
}

// TestCardMutationsAreFound changes one number of a deck at a time, prints its
// cards, and must find that they do not say what the JSON of the deck said before.
func TestCardMutationsAreFound(t *testing.T) {
	const step = measure.Inch / 64
	d := deckOf(t, "boot bench", examples.BootBench)
	marked, plain := &d.Setups[2].Runs[0], &d.Setups[9].Runs[0]
	plain.Nibble = &deck.Nibble{Passes: 2, DrawBack: measure.Inch} // the bench has none
	want := jsonOf(t, d).said(d)
	changes := map[string]func() (undo func()){
		"near edge":   func() func() { return changed(&d.Setups[4].Fence.NearEdge, step) },
		"depth":       func() func() { return changed(&marked.Heights[len(marked.Heights)-1], step) },
		"start":       func() func() { return changed(&d.Setups[2].Marks[0].Start.LeadPastEdge, step) },
		"back stop":   func() func() { return changed(&d.Setups[2].Marks[0].Start.TailBeforeEdge, step) },
		"stop":        func() func() { return changed(&d.Setups[2].Marks[1].Stop.LeadPastEdge, step) },
		"pieces":      func() func() { return changed(&d.Plan.Pieces[6].Count, 1) },
		"run's piece": func() func() { p := plain.Piece; plain.Piece = marked.Piece; return func() { plain.Piece = p } },
		"pair":        func() func() { return replaced(&marked.Pair, "B") },
		"down":        func() func() { return replaced(&plain.Step.Down, plain.Step.Down.Opposite()) },
		"fence":       func() func() { return replaced(&plain.Step.Fence, plain.Step.Fence.Opposite()) },
		"leads":       func() func() { return replaced(&plain.Leads, plain.Leads.Opposite()) },
		"drawn back":  func() func() { return changed(&plain.Nibble.DrawBack, step) },
		"passes":      func() func() { return replaced(&marked.Heights, marked.Heights[1:]) },
		"guide":       func() func() { return replaced(&d.Setups[2].Marks[1].Stop.Guide, deck.ByTail) },
	}
	require.True(t, maps.Equal(want, readCards(cardWords(t, d), d)), "unchanged")
	for what, change := range changes {
		undo := change()
		assert.False(t, maps.Equal(want, readCards(cardWords(t, d), d)), "%s changed, and the cards read the same", what)
		undo()
	}
	require.True(t, maps.Equal(want, readCards(cardWords(t, d), d)), "all undone")
}

func changed[N int | measure.Length](n *N, by N) func() {
	*n += by
	return func() { *n -= by }
}

func replaced[T any](v *T, by T) func() {
	was := *v
	*v = by
	return func() { *v = was }
}
