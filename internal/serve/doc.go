// Package serve hands the plan of one piece to a browser on this machine: the plan
// and its drawings as JSON, drawings as SVG, the shop pack as PDF, a stream that
// tells of changes, and the page itself.
//
// It computes nothing: a Source brings the plan, Options bring the renderers. It
// answers only on the host names it was told, reads only, and lets the page load
// nothing from elsewhere.
package serve
