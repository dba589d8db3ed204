package browser

import (
	"context"
	"encoding/json"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// Node is what a screen reader is told of one thing on the page.
type Node struct{ Role, Name string }

// Accessible is what a screen reader is told, in its order.
func (b *Tab) Accessible() []Node {
	b.t.Helper()
	ctx, stop := context.WithTimeout(b.ctx, patience)
	defer stop()
	tree, err := chromedp.Call(ctx, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(b.t, err)
	var all []Node
	for _, n := range tree.Nodes {
		if !n.Ignored {
			all = append(all, Node{b.word(n.Role), b.word(n.Name)})
		}
	}
	return all
}

func (b *Tab) word(v *accessibility.Value) (text string) {
	b.t.Helper()
	if v != nil && len(v.Value) > 0 {
		require.NoError(b.t, json.Unmarshal(v.Value, &text))
	}
	return text
}

// Prefer sets what the user of the browser asked of all pages, such as
// "prefers-reduced-motion".
func (b *Tab) Prefer(feature, wish string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: feature, Value: wish}},
		})
		return err
	}))
}
