package planfile

import "fencecard/joinery"

// ReadInParts reads a plan like Read, in trees no heavier than the most.
func ReadInParts(name string, data []byte, open func(path string) ([]byte, error), most int) (*joinery.Plan, error) {
	r := newPlanReader(name, open)
	r.most = most
	return r.readAll(data)
}
