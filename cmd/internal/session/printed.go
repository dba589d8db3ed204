package session

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/joinery/plantext"
	"fencecard/output/deckfile"
	"fencecard/output/wording"
	"fencecard/setup"
	"fencecard/setup/book"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/proof"
	"fencecard/setup/remark"
)

// Printed says which deck a command means: the one that lies on paper. It is
// made anew as it was made then, or read from the JSON written then.
type Printed struct {
	Search SearchFlag
	Batch  int
	File   string
	Code   string
	Book   string // the setup book, "" for the usual one

	about string // the number of the run or setup that is asked about, "" for all
}

// Flags adds the flags that say which deck is meant.
func (p *Printed) Flags(cmd *cobra.Command) {
	p.Search.Flag(cmd)
	f := cmd.Flags()
	f.IntVar(&p.Batch, "batch", 1, "for `N` of the whole work: every count multiplied")
	f.StringVar(&p.Code, "deck-code", "", "refuse another deck than the one of this `CODE`, which its papers bear")
	f.StringVar(&p.File, "deck", "", "the deck as it was written to this JSON `FILE`, in place of one made anew")
	cmd.MarkFlagsMutuallyExclusive("deck", "search")
	Offer(cmd, "deck", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
	})
}

// TakeCode takes the code of a deck off a number that has one, such as
// "3.1@k7fw", and checks how it is written.
func (p *Printed) TakeCode(number string) (string, error) {
	number, code, has := strings.Cut(strings.TrimSpace(number), "@")
	p.about = number
	if has && p.Code != "" && !strings.EqualFold(p.Code, code) {
		return "", Usage(fmt.Errorf("--deck-code %s and %s@%s name two decks: leave one out", p.Code, number, code))
	}
	if has {
		p.Code = code
	}
	if (has || p.Code != "") && !deckcode.Is(p.Code) {
		return "", Usage(fmt.Errorf("%q is no code of a deck: write the four letters and digits that stand after the word deck on its papers", p.Code))
	}
	return strings.TrimSpace(number), nil
}

// Setup reads the number of a setup, which may have a deck's code behind it.
func (p *Printed) Setup(flag, text string) (int, error) {
	number, err := p.TakeCode(text)
	if err != nil {
		return 0, err
	}
	n, err := strconv.Atoi(number)
	if err != nil {
		return 0, Usage(fmt.Errorf("--%s takes the number of a setup, such as 3 or 3@k7fw, not %q", flag, text))
	}
	return n, nil
}

// Is refuses a deck of another code than was named. Where none was, it says
// which deck is meant.
func (s *Session) Is(d *deck.Deck, p Printed) error {
	if p.Code == "" {
		s.Note("deck %s", d.Code)
		return nil
	}
	if strings.EqualFold(p.Code, d.Code) {
		return nil
	}
	fault := plantext.Fault{
		Problem: fmt.Sprintf("this is not deck %s: the plan makes deck %s now", strings.ToLower(p.Code), d.Code),
		Remedy: "give the --search and --batch that its papers were printed with, or its JSON with --deck FILE; " +
			"if the plan, its shop or what the setup book learnt changed since, print it again",
	}
	if p.File != "" {
		fault.Problem = fmt.Sprintf("this is not deck %s: %s holds deck %s", strings.ToLower(p.Code), p.File, d.Code)
		fault.Remedy = "give the JSON that was written with those papers"
	}
	return plantext.Faults{fault}
}

// PrintedDeck makes or reads the deck that is meant, with what the setup book says of
// it. One that is read must prove.
func (s *Session) PrintedDeck(ctx context.Context, plan *joinery.Plan, p Printed) (*deck.Deck, error) {
	plan, err := setup.Batch(plan, p.Batch)
	if err != nil {
		return nil, err
	}
	d, err := s.MadeOrRead(ctx, plan, p)
	if err != nil {
		return nil, err
	}
	return d, s.AsPrinted(d, p)
}

// AsPrinted gives a deck the numbers that its papers have, by the setup book, and
// refuses one of another code.
func (s *Session) AsPrinted(d *deck.Deck, p Printed) error {
	b, err := s.ReadBook(p.Book)
	switch {
	case err == nil:
		s.tellSince(d, p.mark(d, b), p.about)
	case p.Book != "":
		return err
	default:
		s.unused(err)
	}
	return s.Is(d, p)
}

// Found is what a setup book has for the setups of a deck.
type Found struct {
	matches []book.Match
	since   map[int]string // by the number of a setup: what was learnt after its papers were printed
	code    string         // of papers printed now
}

// mark gives a deck what a book says of it. Papers that are named and were printed
// before a test cut taught other numbers keep their own, and say what was learnt since.
func (p Printed) mark(d *deck.Deck, b *book.Book) Found {
	before := make([]*deck.Kept, len(d.Setups))
	for i := range d.Setups {
		before[i] = d.Setups[i].Kept
	}
	code := d.Code
	f := Found{matches: b.Mark(d), code: d.Code, since: map[int]string{}}
	if d.Code == code || !strings.EqualFold(p.Code, code) {
		return f
	}
	for i := range d.Setups {
		s := &d.Setups[i]
		if !s.Kept.Numbers() && !before[i].Numbers() {
			continue
		}
		now := *s
		s.Kept = before[i]
		since := wording.Since(s, &now, d.Plan.Shop.Scale)
		if since == "" {
			continue
		}
		f.since[s.Number] = since
		kept := deck.Kept{}
		if now.Kept != nil {
			kept = deck.Kept{Name: now.Kept.Name, Code: now.Kept.Code, Notes: now.Kept.Notes}
		}
		if before[i] != nil {
			kept = *before[i]
		}
		kept.Learnt = append(slices.Clone(kept.Learnt), "learnt after deck "+code+": "+since)
		s.Kept = &kept
	}
	deckcode.Seal(d)
	return f
}

// tellSince says of the setups of a deck, or of that of the run or setup that is asked
// about, what was learnt after their papers were printed.
func (s *Session) tellSince(d *deck.Deck, f Found, about string) {
	for i := range d.Setups {
		n := d.Setups[i].Number
		if since := f.since[n]; since != "" && isAbout(&d.Setups[i], about) {
			fmt.Fprintf(s.Err, "setup %d: after deck %s was printed the setup book learnt %s; papers printed now, deck %s, have that\n", n, d.Code, since, f.code)
		}
	}
}

// isAbout reports whether a run or a setup, by its number, is of a setup; "" is of all.
func isAbout(u *deck.Setup, number string) bool {
	setup, _, _ := strings.Cut(number, ".")
	return setup == "" || setup == strconv.Itoa(u.Number)
}

// MadeOrRead makes a deck anew or reads it from its JSON, which must prove.
func (s *Session) MadeOrRead(ctx context.Context, plan *joinery.Plan, p Printed) (*deck.Deck, error) {
	if p.File == "" {
		return s.MakeDeck(ctx, plan, p.Search)
	}
	data, err := s.ReadFile(p.File)
	if err != nil {
		return nil, err
	}
	defer CollectSooner()() // a deck of somebody else's may have thousands of faults
	claims, err := deckfile.Read(p.File, data, plan.Shop.Scale)
	if err != nil {
		return nil, err
	}
	d, report := ProveAll(plan, claims)
	if err := report.Err(); err != nil {
		return nil, fmt.Errorf("%w\nthe deck in %s does not prove; fencecard check --deck tells more", err, p.File)
	}
	return d, nil
}

// ProveAll proves a deck's claims and what it says besides, and returns the deck
// where the claims prove.
func ProveAll(plan *joinery.Plan, claims *proof.Claims) (*deck.Deck, proof.Report) {
	report := proof.Check(plan, claims)
	if !report.Proved() {
		return nil, report
	}
	d := proof.Deck(plan, claims)
	remark.Add(d)
	report.Warnings = d.Warnings
	report.Add(deckfile.Differences(d, claims))
	return d, report
}
