package source

var geometry = []Source{}
