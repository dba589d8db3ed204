module fencecard

go 1.26
