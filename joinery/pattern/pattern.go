// Package pattern holds regular expressions that are compiled when they are
// first used. The readers have some fifty, most of them for slips that few
// plans have; compiling all of them at every start would take a good part of
// the time of a short command.
package pattern

import (
	"regexp"
	"sync"
)

// Pattern is a regular expression in the syntax of package regexp. It may be
// used by several goroutines at once.
type Pattern struct{ compiled func() *regexp.Regexp }

// New returns the pattern. One that cannot be compiled panics when it is first
// used.
func New(text string) Pattern {
	return Pattern{sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })}
}

// MatchString reports whether the text has a match.
func (p Pattern) MatchString(text string) bool { return p.compiled().MatchString(text) }

// FindStringSubmatch returns the first match and its groups, or nil.
func (p Pattern) FindStringSubmatch(text string) []string {
	return p.compiled().FindStringSubmatch(text)
}

// FindStringSubmatchIndex returns where the first match and its groups stand,
// or nil.
func (p Pattern) FindStringSubmatchIndex(text string) []int {
	return p.compiled().FindStringSubmatchIndex(text)
}

// ReplaceAllString replaces every match; in the replacement $1 is a group.
func (p Pattern) ReplaceAllString(text, by string) string {
	return p.compiled().ReplaceAllString(text, by)
}

// ReplaceEach replaces every match by what is made of it and its groups.
func (p Pattern) ReplaceEach(text string, by func(groups []string) string) string {
	return p.compiled().ReplaceAllStringFunc(text, func(found string) string { return by(p.FindStringSubmatch(found)) })
}

// Expand fills a template's $1, $2 with the groups of a match.
func (p Pattern) Expand(template, text string, match []int) string {
	return string(p.compiled().ExpandString(nil, template, text, match))
}

// Split cuts the text at every match, into n parts at the most; below 0, into
// all of them.
func (p Pattern) Split(text string, n int) []string { return p.compiled().Split(text, n) }

// FindAllString returns all matches, the first ones first.
func (p Pattern) FindAllString(text string) []string { return p.compiled().FindAllString(text, -1) }
