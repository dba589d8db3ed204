package piecelist

import (
	"strings"

	"fencecard/joinery/plantext"
)

// Question is something the list does not say, or says in a way that may not be
// meant.
type Question struct {
	Key     string // tells it from all others of the list
	Place   plantext.Place
	About   string   // what it is about, in a word or two: "thickness", "lies"
	Asks    string   // in one line
	Default string   // the answer most makers would give, or ""
	Why     string   // what speaks for the default, or ""
	Choices []string // some of the answers understood; nil where any length or name is
	Problem string   // as a fault: what is missing or wrong
	Remedy  string   // as a fault: what to write in the list
	Wrong   string   // why an answer that was given is none, or ""
}

// Fault makes a fault of the question, for those who cannot be asked.
func (q Question) Fault() plantext.Fault {
	remedy := q.Remedy
	switch {
	case q.Default == "":
	case strings.HasSuffix(remedy, "write there "+q.Default), strings.HasSuffix(remedy, "such as "+q.Default), remedy == "write "+q.Default:
		remedy += "; --defaults takes that"
	default:
		remedy += "; --defaults takes " + q.Default
	}
	f := plantext.Fault{Place: q.Place, Problem: q.Problem, Remedy: remedy}
	if q.Wrong != "" {
		f.Problem = q.Wrong
	}
	return f
}

// says makes the question about a cell that is wrong: what is wrong, and behind
// a semicolon what to write.
func (q *Question) says(wrong string) {
	problem, remedy, told := strings.Cut(wrong, "; ")
	if q.Problem = problem; told {
		q.Remedy = remedy
	}
}

// mostFaults is how many faults are told of one list; a list with more has one
// of them in every row.
const mostFaults = 100

// Faults makes faults of questions that nobody can be asked; nil where there are
// none.
func Faults(questions []Question) error {
	var faults plantext.Faults
	for _, q := range questions {
		if len(faults) == mostFaults {
			faults.Add(plantext.Fault{Place: plantext.Place{File: q.Place.File, Line: q.Place.Line, Column: q.Place.Column},
				Problem: "there is more to ask from here on", Remedy: "answer the questions above in the list, and run it again"})
			break
		}
		faults.Add(q.Fault())
	}
	return faults.Err()
}

// ask returns what the question is answered with: the maker's answer, or the
// default where those are to be taken. An answer that cannot be read, like a
// question nobody answered, is kept to be asked. The reading returns the value,
// or says why the answer is none.
func ask[T any](r *reader, q Question, read func(answer string) (value T, wrong string)) (value T, ok bool) {
	answer, given := r.o.Answers[q.Key]
	answer = strings.TrimSpace(answer)
	if !given && r.o.Defaults {
		answer = q.Default
	}
	if answer == "" {
		r.questions = append(r.questions, q)
		return value, false
	}
	value, wrong := read(answer)
	if wrong != "" {
		q.Wrong = wrong
		r.questions = append(r.questions, q)
		return value, false
	}
	r.answered(q, answer, given)
	return value, true
}

// answered keeps what was answered as a remark.
func (r *reader) answered(q Question, answer string, given bool) {
	text := "asked: " + q.About + " " + answer
	if !given {
		text = "taken: " + q.About + " " + answer
		if q.Why != "" {
			text += ", since " + q.Why
		}
	}
	r.remarks = append(r.remarks, plantext.Brief(text, 200))
}

// oneOf reads an answer that is one of a few words.
func oneOf(words ...string) func(string) (string, string) {
	return func(answer string) (string, string) {
		for _, w := range words {
			if strings.EqualFold(answer, w) {
				return w, ""
			}
		}
		return "", quoted(answer) + " is none of the answers; write " + plantext.List(words, "or")
	}
}

// quoted puts quotes round a maker's text, cut short for a message.
func quoted(text string) string {
	text = plantext.Brief(strings.Join(strings.Fields(text), " "), 60)
	if strings.Contains(text, `"`) {
		return "‘" + text + "’"
	}
	return `"` + text + `"`
}
