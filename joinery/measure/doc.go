// Package measure holds lengths, which are exact, and the scales that they are
// read on: see [Length] and [Scale]. It reads them as a maker types them and
// writes them as a rule shows them.
package measure
