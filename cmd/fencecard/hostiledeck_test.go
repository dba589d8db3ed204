package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"sync"

	"fencecard/joinery/planfile"
	"fencecard/output"
	"fencecard/setup"
)

// legDeck is the JSON deck of the leg.
var legDeck = sync.OnceValue(func() string {
	plan, err := planfile.Read("plan.yaml", []byte(legPlan), nil)
	if err != nil {
		panic(err)
	}
	deck, err := setup.Make(plan)
	if err != nil {
		panic(err)
	}
	var page bytes.Buffer
	if err := output.JSON(&page, deck); err != nil {
		panic(err)
	}
	return page.String()
})

// inDeck puts a text in the place of a part of the leg's deck, which is there.
func inDeck(part, text string) string {
	before, after, ok := strings.Cut(legDeck(), part)
	if !ok {
		panic("the deck has no " + part)
	}
	return before + text + after
}

// inRun does the same in the leg's run.
func inRun(part, text string) string {
	head, run, ok := strings.Cut(legDeck(), `"runs": [`)
	before, after, found := strings.Cut(run, part)
	if !ok || !found {
		panic("the run has no " + part)
	}
	return head + `"runs": [` + before + text + after
}

// deckHead opens a deck up to its setups.
const deckHead = `{"format": "fencecard deck 2", "setups": `

func hostileDecks() []hostileDocument {
	read := documentKind{
		file: "deck.json", args: []string{"check", "plan.yaml", "--deck", "deck.json"}, sound: legDeck(), plan: legPlan,
	}
	var docs []hostileDocument
	add := func(name, says string, exit int, text func(size int) string) {
		docs = append(docs, hostileDocument{"deck/" + name, read, func() string { return text(megabyte) }, says, exit, mostTimes})
	}
	large := func(name, says string, text func(size int) string) {
		docs = append(docs, hostileDocument{"deck/" + name + " of 8 MB", read, func() string { return text(8 * megabyte) }, says, exitFault, mostTimes})
	}
	refused := func(name, says string, text func(size int) string) { add(name, says, exitFault, text) }
	sound := func(name string, text func(size int) string) { add(name, "1 run proved.", exitDone, text) }

	// What cannot be read.
	refused("brackets", "deck.json:1:51: lists and objects lie inside one another too deeply", func(n int) string { return fill("[", n) })
	refused("braces", "deck.json:1:", func(n int) string { return fill(`{"a":`, n) })
	refused("deep setups", "deck.json:1:", func(n int) string { return deckHead + fill("[", n) })
	refused("zero bytes", "deck.json:1:1: ", func(n int) string { return fill("\x00", n) })
	refused("UTF-16", "deck.json:1:1: the deck is saved as UTF-16", func(n int) string { return wide(fill(`{"a":1}`, n)) })
	refused("Latin-1", "deck.json:1:", func(n int) string { return inDeck("{", `{"x": "`+fill("B\xf6cke ", n)+`",`) })
	refused("cut short", "the deck breaks off here", func(n int) string { return inDeck("{", `{"x": "`+fill("x", n))[:n] })
	refused("more behind", "something stands behind the end of the deck", func(n int) string { return legDeck() + fill("{}", n) })
	refused("commas", "deck.json:1:", func(n int) string { return deckHead + fill(",:", n) })
	refused("open text", "deck.json:1:", func(n int) string { return `{"title": "` + fill("x", n) })
	refused("escapes", "deck.json:1:", func(n int) string { return `{"title": "` + fill(`\u0041`, n) })

	// Lists of nothing.
	for _, item := range []string{"{}", "[]", "1", "null", `""`, "1e999999", `{"number":1}`} {
		refused("setups of "+item, "deck.json:1:", func(n int) string { return deckHead + "[" + fill(item+",", n) + item + "]}" })
		refused("runs of "+item, "deck.json:", func(n int) string { return inDeck(`"runs": [`, `"runs": [`+fill(item+",", n)) })
		refused("heights of "+item, "deck.json:", func(n int) string { return inDeck(`"heights": [`, `"heights": [`+fill(item+",", n)) })
	}
	refused("heights of one", "heights", func(n int) string {
		return inDeck(`"heights": [`, `"heights": [`+fill(`{"mm":1.5875,"text":"1/16"},`, n))
	})
	refused("setups of the leg", "setup", func(n int) string {
		_, setup, _ := strings.Cut(legDeck(), `"setups": [`)
		setup, _, _ = strings.Cut(setup, `"cards": [`)
		setup = setup[:strings.LastIndex(setup, "]")]
		return inDeck(`"setups": [`, `"setups": [`+fill(setup+",", n))
	})
	refused("runs of the leg", "1.2", func(n int) string { return inDeck(`"runs": [`, `"runs": [`+fill(legCard()+",", n)) })
	denseCards := func(n int) string { return dense(inDeck(`"runs": [`, `"runs": [`+fill(dense(legCard())+",", n))) }
	refused("dense cards", "1.2", denseCards)
	large("dense cards", "which is more than any cut takes", denseCards)
	large("a number", "deck.json:14:17: 9999", func(n int) string { return inDeck("9.525", fill("9", n)) })
	large("a title", "the deck is titled", func(n int) string { return inDeck(`"Leg"`, `"`+fill("x", n)+`"`) })
	large("brackets", "deck.json:1:51: lists and objects", func(n int) string { return fill("[", n) })
	large("texts", "deck.json:", func(n int) string { return inDeck(`"heights": [`, `"heights": [`+fill(`"",`, n)) })

	// One value.
	for _, field := range []string{`"title": "Leg"`, `"unit": "in"`, `"name": "three eighths up-cut"`, `"kind": "up-cut"`,
		`"number": "1.1"`, `"piece": "leg"`, `"wood": "white ash"`, `"cut": "rail"`, `"kind": "mortise"`, `"ends": "round"`,
		`"cap_rule": "5/8`, `"guide": "lead"`, `"text": "3/8"`, `"down": "right"`, `"begin": "drop"`, `"format": "fencecard deck 2"`} {
		refused("a long text, "+field, "xxx", func(n int) string {
			put := inRun
			if _, run, _ := strings.Cut(legDeck(), `"runs": [`); !strings.Contains(run, field) {
				put = inDeck
			}
			return put(field, strings.TrimSuffix(field, `"`)+fill("x", n)+`"`+strings.Repeat(`, "y": "`, 1-strings.Count(field[len(field)-1:], `"`)))
		})
	}
	refused("a long number", "deck.json:14:17: ", func(n int) string { return inDeck("9.525", fill("9", n)) })
	refused("a long fraction", "deck.json:13:21: the text says", func(n int) string { return inDeck("9.525", "9."+fill("5", n)) })
	refused("a long exponent", "deck.json:14:17: ", func(n int) string { return inDeck("9.525", "1e"+fill("9", n)) })
	refused("a count with many digits", "deck.json:", func(n int) string { return inDeck(`"count": 1`, `"count": 1`+fill("0", n)) })

	// Keys.
	refused("a key again and again", "is given twice in a run", func(n int) string { return inDeck(`"count": 1,`, fill(`"count": 1,`, n)) })
	sound("a strange key again and again", func(n int) string { return inDeck(`"count": 1,`, `"count": 1,`+fill(`"x": 1,`, n)) })
	sound("a million keys", func(n int) string { return inDeck("{", counted("{", `"k%d":1,`, n)) })
	sound("a million keys in a run", func(n int) string { return inDeck(`"count": 1,`, counted(`"count": 1,`, `"k%d":1,`, n)) })

	// In the place of what a proof passes over.
	for _, item := range []string{"{}", "[]", "1", "null", `""`, `{"a":[1]}`} {
		refused("warnings of "+item, "as it stands it should have 0", func(n int) string { return inDeck(`"warnings": [`, `"warnings": [`+fill(item+",", n)+item) })
		sound("a strange list of "+item, func(n int) string { return inDeck(`"count": 1,`, `"count": 1, "x": [`+fill(item+",", n)+item+"],") })
		refused("cautions of "+item, "deck.json:", func(n int) string { return inDeck(`"cautions": [`, `"cautions": [`+fill(item+",", n)) })
		refused("a guide of "+item, "a list stands where line, lead or tail belongs", func(n int) string { return inRun(`"guide": "lead"`, `"guide": [`+fill(item+",", n)+item+`]`) })
		refused("a strange start of "+item, "the run says", func(n int) string {
			return inRun(`"guide": "lead"`, `"guide": "tail", "x": [`+fill(item+",", n)+item+`]`)
		})
	}
	refused("a caution of many lists", "letters for its length", func(n int) string {
		before, after, _ := strings.Cut(legDeck(), "  \"cautions\": [\n    {")
		return before + `"cautions": [{"x": [` + fill("[],", n) + "[]]," + after
	})
	refused("deep in a strange key", "deck.json:", func(n int) string {
		return inDeck(`"count": 1,`, `"count": 1, "x": `+strings.Repeat("[", n/2)+strings.Repeat("]", n/2)+",")
	})
	return docs
}

// dense is a JSON text without its blanks.
func dense(text string) string {
	var b bytes.Buffer
	if json.Compact(&b, []byte(text)) != nil {
		panic("the deck is no JSON")
	}
	return b.String()
}

// legCard is the one card of the leg.
func legCard() string {
	_, card, _ := strings.Cut(legDeck(), `"runs": [`)
	card, _, _ = strings.Cut(card, `"cards": [`)
	card = card[:strings.LastIndex(card, "]")]
	card = card[:strings.LastIndex(card, "}")]
	return card[:strings.LastIndex(card, "]")]
}
