package source

var structure = []Source{}
