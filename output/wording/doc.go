// Package wording is what paper and screen say in the same words.
package wording
