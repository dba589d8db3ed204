// Package paper lays out and draws, and knows nothing of wood: lengths on paper,
// a [Canvas] with back ends for PDF and SVG, the two faces of type,
// lines of words ([Phrase]) and figures with built fractions ([Number]), and
// [Block]s, which know their size before they are drawn.
package paper
