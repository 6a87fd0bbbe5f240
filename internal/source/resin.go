package source

var resin = []Source{}
