package planfile

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/joint"

	"go.yaml.in/yaml/v4"
)

const jointExample = "- mortise and tenon: seat rail"

// jointWish is a joint as the maker wrote it, and what came of it.
type jointWish struct {
	kind   *joint.Kind
	word   string // the kind, as it was written
	name   string
	f      *fields
	at     *yaml.Node // the name
	ends   []spotRef
	into   []spotRef
	words  joint.Words
	places []joint.Place // one, or one for each of a repeat
	repeat *repeat
	fence  joinery.Fencing
	tool   joinery.Cut // what the receiving half is made with, and how it is started
	note   string
	nodes  map[string]*yaml.Node // values inside other words: "place front"

	met    []joint.Met
	used   map[joint.Spot]int
	broken bool // it is at fault and makes no cuts
}

// readJoints reads the joints and finds the pieces they name. Those with a fault
// are left out, so that nothing else is faulted for them.
func (r *planReader) readJoints(f *fields) {
	if !f.written("joints") {
		return
	}
	for _, n := range f.entries("joints", "joint", jointExample) {
		if r.over() {
			return
		}
		before := len(r.faults)
		switch j := r.readJoint(n); {
		case j == nil:
		case len(r.faults) == before && r.fits:
			r.joints = append(r.joints, j)
		default:
			r.lost = append(r.lost, j.name)
		}
	}
}

func (r *planReader) readJoint(n *yaml.Node) *jointWish {
	if !r.mapping(n, "a joint begins with its kind and name", "write "+jointExample+", and what goes into what below") {
		return nil
	}
	kind, key := r.jointKind(n)
	if kind == nil {
		return nil
	}
	what := key
	if value := valueOf(n, key); value.Kind == yaml.ScalarNode && !null(value) {
		what = key + " " + quoted(value.Value)
	}
	j := &jointWish{kind: kind, word: key, f: r.fieldsOf(n, what, kind.Keys(), key), nodes: map[string]*yaml.Node{}}
	j.f.must(key)
	j.at = j.f.value(key)
	j.name = j.f.name(key)
	j.f.need(slices.Concat([]string{kind.Half, "into", "place"}, kind.Needs)...)
	j.ends = r.readSpots(j.f, kind.Half, !kind.Flat, nil)
	j.into = r.readSpots(j.f, "into", true, j.ends)
	r.readJointWords(j)
	place := r.readPlace(j)
	if j.f.written("repeat") {
		j.repeat = r.readRepeat(j.f)
		r.repeatPlace(j, place)
	} else {
		j.places = []joint.Place{place}
	}
	j.fence = readFencing(j.f)
	r.readBy(j.f, &j.tool)
	if j.f.has("note") {
		j.note = j.f.text("note", longestNote)
	}
	return j
}

// jointKind finds the key that is a kind of joint; nil where it is a fault.
func (r *planReader) jointKind(n *yaml.Node) (*joint.Kind, string) {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if k := joint.KindNamed(n.Content[i].Value); k != nil {
			return k, n.Content[i].Value
		}
	}
	if len(n.Content) == 0 {
		r.fault(n, "write "+jointExample, "this joint is empty")
		return nil, ""
	}
	var names, all []string
	for _, k := range joint.Kinds {
		names = append(names, k.Name)
		all = append(append(all, k.Name), k.Also...)
	}
	first := n.Content[0]
	remedy := fmt.Sprintf("begin it with %s and a name, such as %s", joinery.List(names, "or"), jointExample)
	if near := joinery.Nearest(first.Value, all); near != "" {
		remedy = "write " + near
	} else if joinery.KindNamed(first.Value) != nil {
		remedy = "a " + first.Value + " is one cut and belongs under cuts; " + remedy
	}
	r.fault(first, remedy, "%s is no kind of joint", quoted(first.Value))
	return nil, ""
}

// jointFault adds what package joint found wrong, at the word that was written.
func (r *planReader) jointFault(j *jointWish, f joint.Fault) {
	j.broken = true
	r.lost = append(r.lost, j.name)
	at := r.place(j.at)
	for _, word := range f.Words {
		if p, ok := r.jointPlace(j, word); ok {
			at = p
			break
		}
	}
	r.add(joinery.Fault{Place: at, Remedy: f.Remedy,
		Problem: fmt.Sprintf("%s %s: ", j.kind, quoted(j.name)) + f.Problem})
}

// jointPlace is where a word of a joint was written.
func (r *planReader) jointPlace(j *jointWish, word string) (joinery.Place, bool) {
	if n := j.nodes[word]; n != nil {
		return r.place(n), true
	}
	var number int
	if _, err := fmt.Sscanf(word, "into %d", &number); err == nil && number < len(j.into) {
		return j.into[number].at, true
	}
	if n := j.f.value(word); n != nil {
		return r.place(n), true
	}
	return joinery.Place{}, false
}
