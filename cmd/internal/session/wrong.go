package session

import "errors"

// usageError is a wrong command line found after the work began.
type usageError struct{ error }

// Usage makes an error one of the command line: what is wrong there is no fault of
// the plan.
func Usage(err error) error { return usageError{err} }

// IsUsage reports whether an error is one of the command line.
func IsUsage(err error) bool {
	var usage usageError
	return errors.As(err, &usage)
}
