package source

var concrete = []Source{}
