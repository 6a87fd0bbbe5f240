package source

var form = []Source{}
