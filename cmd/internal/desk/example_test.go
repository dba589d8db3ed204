package desk_test

import (
	"context"
	"fmt"
	"net/http/httptest"
	"strings"

	"fencecard/cmd/internal/desk"
	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
)

func Example() {
	handler := desk.New(desk.Work{
		Path: "bench.yaml",
		Make: func(ctx context.Context, plan *joinery.Plan) (*deck.Deck, error) {
			return setup.MakeWith(ctx, plan, setup.Options{})
		},
	})
	answer := httptest.NewRecorder()
	handler.ServeHTTP(answer, httptest.NewRequest("POST", "/plan/look", strings.NewReader(`{"text": "unit: furlong\npieces: []\n"}`)))
	fmt.Print(answer.Body)
	// Output: {"faults":[{"line":1,"from":6,"at":"/","of":"title, unit, wood","words":"\"furlong\" is no unit; write in or mm","plain":"\"furlong\" is no unit; write in or mm."}],"begins":true}
}
