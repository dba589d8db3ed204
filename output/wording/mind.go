package wording

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Mind is what to mind at a setup: the cautions of several runs, which are said
// once, those of the runs of one pair of marks, and those of one run alone.
type Mind struct {
	All   []Minding                 // the gravest first
	Pairs map[string][]deck.Caution // by the letter of the pair
	Own   map[*deck.Run][]deck.Caution
	runs  []*deck.Run // of the setup
	room  bool
	// shared and doing are what All and Do were made of, each with its runs.
	shared []Minding
	doing  []doing
	holds  map[*deck.Run]holding
	// Do is what is done at the runs of the setup besides, each a sentence or two.
	Do []string
	// Squared: the round ends of all runs that leave any are chiselled square.
	Squared bool
	// Least: the rest of what is minded is said elsewhere.
	Least bool
}

// MindIn is what is minded in.
type MindIn struct {
	Scale measure.Scale
	Push  joinery.Push // what pushes work across its end
	Own   bool         // a run has room for cautions of its own
	Block bool         // stops are set by their numbers, none by the work
	Least bool         // a card has room only for what no sheet of a setup can say for it
}

// Minding is a caution and the runs it holds for.
type Minding struct {
	deck.Caution
	Runs []*deck.Run
}

// For names the runs that something holds for, as "3.1, 4, 6–8:"; it is "" where
// they are all of the setup's.
func (m Mind) For(runs []*deck.Run) string {
	if len(runs) == len(m.runs) {
		return ""
	}
	return among(runs, m.runs) + ":"
}

// MindOf parts the cautions of a setup's runs. Where a pair or a run has no room
// for its own, all are said at the head.
func MindOf(u *deck.Setup, in MindIn) Mind {
	m := minds(u, in).tried(u)
	m.holds = m.holding()
	return m
}

// holding is what holds for one run, by its places in the lists of all.
type holding struct{ shared, doing []int }

// holding is asked once of a setup: [Mind.On] is asked of every row of a sheet, and
// is not to look through all runs each time.
func (m Mind) holding() map[*deck.Run]holding {
	all := make(map[*deck.Run]holding, len(m.runs))
	for i, c := range m.shared {
		for _, r := range c.Runs {
			h := all[r]
			h.shared = append(h.shared, i)
			all[r] = h
		}
	}
	for i, do := range m.doing {
		for _, r := range do.runs {
			h := all[r]
			h.doing = append(h.doing, i)
			all[r] = h
		}
	}
	return all
}

// tried adds where a setup is tried that goes on from the floor of an earlier cut.
func (m Mind) tried(u *deck.Setup) Mind {
	if u.Recessed() {
		m.doing = append(m.doing, doing{words: RecessFirst, runs: m.runs})
		m.Do = m.said(m.doing)
	}
	return m
}

func minds(u *deck.Setup, in MindIn) Mind {
	m := Mind{Pairs: map[string][]deck.Caution{}, Own: map[*deck.Run][]deck.Caution{}, room: in.Own}
	for i := range u.Runs {
		m.runs = append(m.runs, &u.Runs[i])
		m.Squared = m.Squared || SquaredEnds(&u.Runs[i])
	}
	for i := range u.Runs {
		m.Squared = m.Squared && (SquaredEnds(&u.Runs[i]) || !roundEnds(&u.Runs[i]))
	}
	m.doing = doings(u, in, m)
	m.Do = m.said(m.doing)
	pairs := map[string]int{} // how many runs each has
	for i := range u.Runs {
		pairs[u.Runs[i].Pair]++
	}
	for _, c := range gathered(u) {
		switch letter := onePair(c.Runs); {
		case c.Code == "shank-and-collet": // it is of the bit, which is fitted once
			c.Runs = make([]*deck.Run, len(u.Runs))
			m.All = append(m.All, c)
		case len(c.Runs) == len(u.Runs) || !in.Own:
			m.All = append(m.All, c)
		case letter != "" && len(c.Runs) == pairs[letter]:
			m.Pairs[letter] = append(m.Pairs[letter], c.Caution)
		case len(c.Runs) == 1:
			m.Own[c.Runs[0]] = append(m.Own[c.Runs[0]], c.Caution)
		default:
			m.All = append(m.All, c)
		}
	}
	m.shared = m.All
	m.All = gravestOnTop(merged(m.All, m.runs))
	return m
}

func gravestOnTop(all []Minding) []Minding {
	slices.SortStableFunc(all, func(a, b Minding) int {
		return cmp.Or(cmp.Compare(b.Weight, a.Weight), cmp.Compare(a.Number, b.Number))
	})
	return all
}

// On is what the head of a setup says of some of its runs: a sheet that hangs apart
// from the head says its warnings again. What is of the bit was done when that was fitted.
func (m Mind) On(runs []*deck.Run) Mind {
	on := m
	on.runs, on.All, on.doing = runs, nil, nil
	shared, doing := map[int][]*deck.Run{}, map[int][]*deck.Run{}
	for _, r := range slices.SortedFunc(slices.Values(runs), byNumber) {
		for _, i := range m.holds[r].shared {
			shared[i] = append(shared[i], r)
		}
		for _, i := range m.holds[r].doing {
			doing[i] = append(doing[i], r)
		}
	}
	for _, i := range slices.Sorted(maps.Keys(shared)) {
		if c := m.shared[i]; c.Weight != deck.Noted {
			c.Runs = shared[i]
			on.All = append(on.All, c)
		}
	}
	on.All = gravestOnTop(merged(joined(on.All), runs))
	for _, i := range slices.Sorted(maps.Keys(doing)) {
		if do := m.doing[i]; !do.after {
			do.runs = doing[i]
			on.doing = append(on.doing, do)
		}
	}
	on.Do = on.said(on.doing)
	return on
}

// MindOfRun is what to mind at one run of a setup, all of it.
func MindOfRun(u *deck.Setup, r *deck.Run, in MindIn) Mind {
	in.Own = false
	alone := *u
	alone.Runs, alone.Marks = []deck.Run{*r}, nil
	if p := u.Pair(r.Pair); p != nil {
		alone.Marks = []deck.Pair{*p}
	}
	return minds(&alone, in).tried(u)
}

// onSheetAlone are cautions that the sheet of a setup has and the card of a piece
// has not: they are of the bit as it is fitted, or told by the run's own numbers.
var onSheetAlone = []string{"shank-and-collet", "early-mouth", "passes"}

// ofThePiece are cautions that tell how a piece is cut, with its own measures: even
// the smallest card has them.
var ofThePiece = []string{"trapped-wood", "cuts-apart", "steep-drop", "breaks-out", "start-hole", "bored-start", "raised-bit", "comes-through"}

// ElseOnSetups says on such a card where the rest is.
const ElseOnSetups = "Mind the setup sheets too."

// MindOfCard is what to mind at the runs of one piece, of all its setups. How high
// the stops are is left to the sheets: they are clamped once for many pieces.
func MindOfCard(c *deck.Card, in MindIn) Mind {
	if len(c.Runs) == 0 {
		return Mind{}
	}
	all := deck.Setup{}
	for _, r := range c.Runs {
		run := *r
		run.Cautions = nil
		for _, caution := range r.Cautions {
			if slices.Contains(onSheetAlone, caution.Code) || in.Least && !slices.Contains(ofThePiece, caution.Code) {
				continue
			}
			caution.Brief = strings.Join(slices.DeleteFunc(sentences(caution.Brief), ofStops), " ")
			run.Cautions = append(run.Cautions, caution)
		}
		all.Runs = append(all.Runs, run)
	}
	m := minds(&all, in)
	m.Least = in.Least
	return m
}

// ofStops reports whether a sentence is of the stop as it is clamped.
func ofStops(sentence string) bool { return strings.HasPrefix(sentence, "The back stop") }

// onePair is the letter of the pair that runs have in common, or "".
func onePair(runs []*deck.Run) string {
	for _, r := range runs {
		if r.Pair != runs[0].Pair {
			return ""
		}
	}
	return runs[0].Pair
}

// doing is what is done at some runs of a setup, their numbers before it where it is
// not plain which they are.
type doing struct {
	words string
	runs  []*deck.Run
	named bool
	after bool // when all are cut
}

// said are doings as sentences.
func (m Mind) said(all []doing) []string {
	var lines []string
	for _, do := range all {
		words := do.words
		if do.named {
			words = strings.TrimSpace(m.For(do.runs) + " " + words)
		}
		lines = append(lines, words)
	}
	return lines
}

// doings are what is done at the runs of a setup: how they cross an end, how a
// back stop is set, what becomes of round ends, what was noted.
func doings(u *deck.Setup, in MindIn, m Mind) []doing {
	those := func(are func(*deck.Run) bool) []*deck.Run {
		return slices.DeleteFunc(slices.Clone(m.runs), func(r *deck.Run) bool { return !are(r) })
	}
	all := m.once(func(r *deck.Run) []string { return sentences(Crossing(r, in.Scale, in.Push)) }, 1)
	if words := BringingUp(u, in.Block); words != "" {
		all = append(all, doing{words: words, runs: those(func(r *deck.Run) bool {
			p := u.Pair(r.Pair)
			return p != nil && BroughtUp(p, in.Block)
		})})
	}
	if m.Squared {
		all = append(all, doing{words: squareAll, runs: those(SquaredEnds), after: true})
	}
	least := 2
	if !in.Own {
		least = 1
	}
	all = append(all, m.once(noted, least)...)
	return all
}

func noted(r *deck.Run) []string {
	if r.Cut.Note == "" {
		return nil
	}
	return []string{"Note: " + r.Cut.Note}
}

// once lists the sentences that are said of so many runs of a setup at least,
// each once with the runs it holds for.
func (m Mind) once(says func(*deck.Run) []string, least int) []doing {
	var all []doing
	for _, r := range m.runs {
		for _, words := range says(r) {
			at := slices.IndexFunc(all, func(do doing) bool { return do.words == words })
			if at < 0 {
				at = len(all)
				all = append(all, doing{words: words, named: true})
			}
			all[at].runs = append(all[at].runs, r)
		}
	}
	return slices.DeleteFunc(all, func(do doing) bool { return len(do.runs) < least })
}

// NoteOf is the note of a run's cut. It is "" where the head of the setup says
// it, since other runs have the same or none has room for its own.
func (m Mind) NoteOf(u *deck.Setup, r *deck.Run) string {
	if !m.room {
		return ""
	}
	for i := range u.Runs {
		if other := &u.Runs[i]; other != r && other.Cut.Note == r.Cut.Note {
			return ""
		}
	}
	return r.Cut.Note
}

// gathered lists what the cautions of a setup say, sentence by sentence, each
// with its runs: of what two say in other figures the rest is said once. That of
// the trial cut is left out: every setup has a line for it.
func gathered(u *deck.Setup) []Minding {
	type said struct{ code, words string }
	at := map[said]int{}
	var found []Minding
	for i := range u.Runs {
		r := &u.Runs[i]
		for _, c := range r.Cautions {
			if c.Code == "trial-cut" {
				continue
			}
			for _, sentence := range sentences(c.Brief) {
				what := said{c.Code, sentence}
				k, ok := at[what]
				if !ok {
					k = len(found)
					at[what] = k
					c.Brief = sentence
					found = append(found, Minding{Caution: c})
				}
				found[k].Runs = append(found[k].Runs, r)
			}
		}
	}
	return joined(found)
}

// joined puts sentences of one caution that hold for the same runs together.
func joined(all []Minding) []Minding {
	var some []Minding
	for _, c := range all {
		at := slices.IndexFunc(some, func(d Minding) bool { return d.Code == c.Code && slices.Equal(d.Runs, c.Runs) })
		if at < 0 {
			some = append(some, c)
		} else {
			some[at].Brief += " " + c.Brief
		}
	}
	return some
}

// sentences parts a text after every full stop that ends one.
func sentences(text string) []string {
	if text == "" {
		return nil
	}
	all := strings.SplitAfter(text, ". ")
	for i := range all {
		all[i] = strings.TrimSpace(all[i])
	}
	return all
}

// SquaredEnds reports whether a run leaves round ends that are chiselled square.
func SquaredEnds(r *deck.Run) bool { return r.Cut.Square && roundEnds(r) }

// roundEnds reports whether a run leaves a round end.
func roundEnds(r *deck.Run) bool { return r.Begin == deck.Drop || r.End == deck.Lift }

// squareAll says that all round ends of a setup are chiselled square, SquareOne
// that those of one run are.
const (
	squareAll = "Afterwards chisel the round ends square."
	SquareOne = "Chisel the round ends square."
)
