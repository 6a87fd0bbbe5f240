// Package clippertest runs an independent polygon clipper written in C++ (Debian's
// libpolyclipping-dev) on rings of grid points, so that geom's results and speed can
// be held against it. It is built only with the tag clipper and used only by tests:
//
//	go test -tags clipper ./internal/geom
package clippertest
