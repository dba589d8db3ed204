package setup

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
	"fencecard/setup/remark"
)

// mostRuns is more than anybody cuts by hand; a deck of as many already takes
// some hundred megabytes, and a short plan of wide cuts would come to millions.
const mostRuns = 50_000

// Jobs lists every channel of a plan with the ways to make it, in the plan's
// order, or the faults that stop the deck: channels that no bit of the shop
// can make, or more runs than mostRuns.
func Jobs(plan *joinery.Plan) ([]Job, error) {
	var jobs []Job
	var faults plantext.Faults
	var stopped []*joinery.Piece
	m, kept := maker{&plan.Shop}, sameWays{}
	runs, most := 0, 0 // in all, and the job that takes the most
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		first := len(jobs)
		for j := range p.Cuts {
			c := &p.Cuts[j]
			if c.By != "" {
				continue
			}
			for _, ch := range c.Channels {
				ways, why := m.ways(p, c, ch)
				if len(ways) == 0 {
					stopped = append(stopped, p)
					faults.Add(why.fault(p, c, ch, &plan.Shop))
				}
				jobs = append(jobs, Job{Piece: p, Cut: c, Channel: ch, Ways: kept.of(ways)})
				n := jobs[len(jobs)-1].runs()
				if n > jobs[most].runs() {
					most = len(jobs) - 1
				}
				if runs += n; runs > mostRuns {
					faults.Add(jobs[most].tooMany())
					return nil, faults.Err()
				}
			}
		}
		linkAfter(jobs, first)
		fromFloors(jobs, first)
		sameFaces(jobs, first, kept)
	}
	if f, ok := remark.WrongUnit(plan, stopped); ok {
		return nil, plantext.Faults{f}
	}
	if err := faultsOnce(faults, stopped).Err(); err != nil {
		return nil, err
	}
	addCommon(jobs, plan.Shop.Scale, kept)
	return jobs, nil
}

var sideWord = pattern.New(`\b(left|right|front|back|top|bottom)\b`)

// faultsOnce tells once, with the names of all, what stops several pieces at one place of
// the plan, as a piece and its mirror images. Each piece is that of the fault of its
// number.
func faultsOnce(faults plantext.Faults, pieces []*joinery.Piece) plantext.Faults {
	type cause struct {
		plantext.Place
		words string
	}
	var once plantext.Faults
	at, names := map[cause]int{}, map[int][]string{}
	for i, f := range faults {
		name := fmt.Sprintf("%q", pieces[i].Name)
		words := strings.Replace(f.Problem, " in "+name, "", 1) + f.Remedy
		c := cause{f.Place, sideWord.ReplaceAllString(words, "side")}
		n, told := at[c]
		if !told || !f.Place.Known() {
			n = len(once)
			at[c], once = n, append(once, f)
		}
		if !slices.Contains(names[n], name) {
			names[n] = append(names[n], name)
		}
	}
	for n, all := range names {
		once[n].Problem = strings.Replace(once[n].Problem, " in "+all[0], " in "+plantext.List(all, "and"), 1)
	}
	return once
}

// runs tells how many runs the channel takes at the fewest.
func (j *Job) runs() int {
	if len(j.Ways) == 0 {
		return 0
	}
	return len(j.Ways[0].Steps)
}

// tooMany is the fault of a plan with too many runs, no job of which takes
// more than this one.
func (j *Job) tooMany() plantext.Fault {
	f := plantext.Fault{Place: j.Cut.Place,
		Problem: fmt.Sprintf("the plan comes to more than %d,%03d runs, the most in one deck", mostRuns/1000, mostRuns%1000),
		Remedy:  "write a plan for each part of the work"}
	if n := j.runs(); n > 1 {
		f.Place = j.Cut.Places.At(f.Place, "width", "length")
		f.Problem += fmt.Sprintf("; the %s %q in %q alone takes %d, the best bit for it being the %s",
			j.Cut.Kind, j.Cut.Name, j.Piece.Name, n, j.Ways[0].Bit.Name)
		f.Remedy = "add a wider bit to the shop, or " + f.Remedy
	}
	return f
}

// linkAfter fills After for one piece's jobs, jobs[first:].
func linkAfter(jobs []Job, first int) {
	for i := first; i < len(jobs); i++ {
		for j := first; j < len(jobs) && jobs[i].Channel.Section.Shaped(); j++ {
			if smallerThere(jobs[i].Channel, jobs[j].Channel) && !slices.Contains(jobs[j].Piece.WaitsFor(jobs[j].Cut), jobs[i].Cut.Name) {
				jobs[i].After = append(jobs[i].After, j)
			}
		}
		for j := i - 1; j >= first && jobs[i].Channel.Recess.Depth > 0 && jobs[j].Cut == jobs[i].Cut; j-- {
			jobs[i].After = append(jobs[i].After, j)
		}
		if len(jobs[i].Cut.After) == 0 {
			continue
		}
		after := jobs[i].Piece.WaitsFor(jobs[i].Cut)
		for j := first; j < len(jobs); j++ {
			if slices.Contains(after, jobs[j].Cut.Name) {
				jobs[i].After = append(jobs[i].After, j)
			}
		}
	}
}
