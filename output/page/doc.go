// Package page writes a deck as one HTML page to read, tick and try at the table:
// its run sheet, the sheet of every setup, every run as large as a screen, what can
// be measured, and what can be printed. The drawings are those of the paper.
//
// A page is served by a program that keeps the ticks, or stands in a file by
// itself and keeps them in the browser. Without its script it shows all it has,
// under one another. The script computes nothing of cuts: it ticks boxes, shows
// one part of the page at a time, and hands ticks over.
package page
