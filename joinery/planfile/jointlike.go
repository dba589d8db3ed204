package planfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
)

// checkJoints looks at the like pieces that go into mirrors: each must be its own
// mirror image, or the first one turned about.
func (r *planReader) checkJoints() {
	if len(r.Faults) > 0 {
		return // cuts may be missing
	}
	told := map[*joinery.Piece]bool{}
	for _, j := range r.joints {
		for _, m := range j.met {
			if !m.Like || m.Flips == (joinery.Flips{}) || told[m.Part] || joint.Serves(m.Part, m.Flips) {
				continue
			}
			told[m.Part] = true
			var across []string
			for _, d := range joinery.Dimensions {
				if m.Flips[d] {
					across = append(across, d.String())
				}
			}
			list := strings.Join(across, ", ")
			if len(across) > 1 {
				list = "[" + list + "]"
			}
			r.jointFault(j, joint.Fault{
				Words: []string{j.kind.Half},
				Problem: fmt.Sprintf("%q mirrors %q, so what goes in there is the mirror image of %q, and a second one like it is not, however it is turned",
					m.Into.Name, m.Into.Original(), m.Part.Name),
				Remedy: fmt.Sprintf("write a piece with mirror: {of: %s, across: %s}, and as many fewer behind count", m.Part.Original(), list),
			})
		}
	}
}

// mayJoin reports whether a name may be that of a cut from a joint that is at
// fault.
func (r *planReader) mayJoin(name string) bool {
	for _, lost := range r.lost {
		if name == lost || strings.HasPrefix(name, lost+" ") {
			return true
		}
	}
	return false
}
