// Package plantext holds the text of a plan as its faults need it: lines and
// places, what is wrong there in words, and the nearest name to a slip of the
// pen. It knows nothing of what a plan says.
package plantext
