// Package planform stands between the text of a plan and forms to fill in, for
// makers who do not write YAML. The text stays the truth: [Read] makes forms of
// it, and [Put] writes a form into it as if by hand, leaving every other byte as it
// was. [Blank], [BlankCut] and [BlankJoint] are forms for something new, and
// [Remove] takes something out.
//
// What a form asks comes from the tables that the reader of plans goes by: a
// new kind of cut or joint, or a new key, appears in forms without a line here. What a
// value means, and whether it is right, is the reader's to say: a form holds
// what was typed, with its slips, and planfile.Read of the text has the faults.
//
// A shop file has forms too: it is a text with a shop and no pieces.
package planform
