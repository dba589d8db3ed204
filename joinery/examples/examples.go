// Package examples holds the plans and the shop files that come with the
// program: a whole bench to look at, and what a maker starts from.
package examples

import _ "embed"

// BootBench is the built-in plan, in inches, of a bench with joints and mirrored legs.
//
//go:embed boot-bench.yaml
var BootBench []byte

// StarterPlan is a short plan with remarks, to be changed by its maker; it
// names no shop and runs as it is.
//
//go:embed starter-plan.yaml
var StarterPlan []byte

// StarterShop is a shop file with remarks, to be changed by its maker; it is
// read as it is.
//
//go:embed starter-shop.yaml
var StarterShop []byte

// StarterShopInMM is the like in millimetres, for a plan that is.
//
//go:embed starter-shop-mm.yaml
var StarterShopInMM []byte
