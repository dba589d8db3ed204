package wording

import (
	"fmt"
	"strings"

	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// JointLines says what a run's joint needs: what it goes with and how it
// fits, and on that of a mortise, groove or dado where the part comes to
// lie and what the seasons ask for. A channel that takes several fence
// distances says so once.
func JointLines(r *deck.Run, s measure.Scale) []string {
	if r.Joint == nil || r.Step.Position > 1 {
		return nil
	}
	j := jointText{r.Joint, s}
	lines := []string{j.fits(r)}
	if r.Joint.Into.Cut != r.Cut {
		return lines
	}
	if text := j.reveals(); text != "" {
		lines = append(lines, text)
	}
	if r.Joint.Movement != nil {
		lines = append(lines, j.seasons())
	}
	return lines
}

// Joined says of a whole joint what its card says: how it fits, where the part
// comes to lie and what the seasons ask for.
func Joined(joint *deck.Joint, s measure.Scale) []string {
	return JointLines(&deck.Run{Joint: joint, Cut: joint.Into.Cut}, s)
}

type jointText struct {
	*deck.Joint
	Scale measure.Scale
}

// fits names the other half and the gaps between the two.
func (j jointText) fits(r *deck.Run) string {
	other := j.Part
	if other.Cut == r.Cut {
		other = j.Into
	}
	var parts []string
	for _, f := range j.Fits {
		part := fmt.Sprintf("%s %s into %s", f.Of, j.Scale.Fine(f.Part), j.Scale.Fine(f.Room))
		if missing := f.Wants - f.Gap(); f.Gap() >= 0 && missing > 0 {
			when := "at the trial"
			if j.Part.Cut != nil { // no height has the play in it
				when = "as set; fitted at the trial"
			}
			part += fmt.Sprintf(" (%s %s, for %s of play)", when, j.Scale.Fine(f.Room-f.Wants), j.Scale.Fine(f.Wants))
		}
		parts = append(parts, part)
	}
	return "Joins " + other.String() + ": " + strings.Join(parts, ", ") + "."
}

// reveals says how far the part's faces stand back, and its end from the end
// it is set against; where the other end comes to lie follows.
func (j jointText) reveals() string {
	var parts []string
	for i, r := range j.Reveals[:min(3, len(j.Reveals))] {
		lies := j.Scale.Fine(r.Distance) + " " + joint.From(r.Side)
		switch {
		case r.Distance == 0:
			lies = "flush at the " + r.Side.String()
		case r.Distance < 0:
			lies = fmt.Sprintf("%s proud of the %s", j.Scale.Fine(-r.Distance), r.Side)
		}
		if i%2 == 0 { // the side that it is measured from, before the one opposite
			lies += j.playAt(r, j.Reveals[i+1])
		}
		parts = append(parts, lies)
	}
	if parts == nil {
		return ""
	}
	return "The " + j.Part.Piece.Name + " lies " + strings.Join(parts, ", ") + "."
}

// playAt says which way a part that lies off both walls can move, beside how far it is
// from a side.
func (j jointText) playAt(near, far deck.Reveal) string {
	switch near.Play {
	case 0:
		return ""
	case far.Play:
		return fmt.Sprintf(" (%s of play either way)", j.Scale.Fine(near.Play))
	}
	return fmt.Sprintf(" (%s of play to the %s)", j.Scale.Fine(near.Play), near.Side)
}

// seasons says how much the joint moves, the room there is, and where to glue.
func (j jointText) seasons() string {
	m := j.Movement
	text := fmt.Sprintf("Seasons: the %s moves %s across its grain (%s%s).", j.Part.Piece.Name, j.Scale.Fine(m.Need), m.Change, j.reckoned())
	free := m.Fixed.Opposite()
	switch {
	case m.Floats():
		return text + " No glue: it floats in its groove."
	case m.Whole():
		return text + " Narrow enough to glue all over."
	case m.Open:
		text += fmt.Sprintf(" The %s end is open: keep %s free beyond it.", free, j.Scale.Fine(m.Need))
	default:
		text += fmt.Sprintf(" Room at the %s: %s.", free, j.Scale.Fine(max(0, m.Room)))
	}
	return text + fmt.Sprintf(" Set it against the %s, glue %s there, leave the rest free.", m.Fixed, j.Scale.Fine(m.Glue))
}

// reckoned says what an unnamed wood was taken for.
func (j jointText) reckoned() string {
	if j.Part.Piece.Wood.Name == "" {
		return ", wood unknown: reckoned as " + j.Movement.Wood.Name
	}
	return ""
}
