package main

func hostileBooks() []hostileDocument { return nil }
