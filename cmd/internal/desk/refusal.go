package desk

import (
	"cmp"
	"errors"
	"net/http"
	"strings"

	"fencecard/joinery/plantext"
)

// Conflict is an error of what is not as the page takes it to be: a name that is taken,
// a plan that is not saved, a setup that is gone.
type Conflict string

func (c Conflict) Error() string { return string(c) }

// unfit is an error of what a maker wrote or measured.
type unfit string

func (u unfit) Error() string { return string(u) }

// statusOf is the status of an answer that is an error: what a maker can mend is no
// failure of the program.
func statusOf(err error) int {
	switch {
	case errors.As(err, new(Conflict)):
		return http.StatusConflict
	case errors.As(err, new(unfit)), errors.As(err, new(plantext.Faults)), errors.As(err, new(plantext.Fault)):
		return http.StatusUnprocessableEntity
	}
	return http.StatusInternalServerError
}

// plainFault is an error in one line, without places of files.
func plainFault(err error) error {
	var faults plantext.Faults
	switch {
	case err == nil:
		return nil
	case errors.As(err, &faults):
		var all []string
		for _, f := range faults {
			all = append(all, f.Words())
		}
		return unfit(cmp.Or(strings.Join(all, "\n"), err.Error()))
	case statusOf(err) != http.StatusInternalServerError:
		return err
	}
	return errors.New(plainly(err))
}
