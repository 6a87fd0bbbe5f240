package source

var foam = []Source{}
