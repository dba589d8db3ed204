package typed

import "fencecard/joinery/pattern"

var (
	lengthFlag = pattern.New(`^--(fence|near|centre|center|far|back-stop|start|stop|height|setback|width|begins|length|depth|fence-stood|height-stood)(=-?\d+)?$`)
	wholePart  = pattern.New(`^-?\d+$`)
	broken     = pattern.New(`^\d+/\d+(in|")?$`)
)

// JoinLengths puts the two words of a length such as --length 2 15/32 together
// again, which a shell has taken apart, as makers write it without quotes.
func JoinLengths(args []string) []string {
	joined := []string{} // for nil, cobra takes those of the process
	for i := 0; i < len(args); i++ {
		m := lengthFlag.FindStringSubmatch(args[i])
		joined = append(joined, args[i])
		if m == nil {
			continue
		}
		if m[2] == "" && i+1 < len(args) && wholePart.MatchString(args[i+1]) {
			i++
			joined = append(joined, args[i])
		} else if m[2] == "" {
			continue
		}
		if i+1 < len(args) && broken.MatchString(args[i+1]) {
			i++
			joined[len(joined)-1] += " " + args[i]
		}
	}
	return joined
}
