package cli

import (
	"context"
	"fmt"
	"net"
	"path/filepath"

	"pourwright/internal/drawing"
	"pourwright/internal/plan"
	"pourwright/internal/serve"
)

type serveCmd struct {
	pieceArg
	Address string `help:"Where to listen; port 0 takes a free one." default:"127.0.0.1:8470"`
	memory  plan.Memory
}

// Run serves the piece until interrupted.
func (c *serveCmd) Run(con *console) error {
	if _, err := c.open(); err != nil {
		return err
	}
	l, err := net.Listen("tcp", c.Address)
	if err != nil {
		return &addressError{c.Address, err}
	}
	source := serve.NewFileSource(c.snapshot)
	go source.Run(con.ctx)
	fmt.Fprintf(con.out, "pourwright: %s\npress Ctrl-C to stop\n", serve.URL(l.Addr()))
	return serve.Run(con.ctx, l, serve.New(serve.Options{Source: source, SVG: writeSVG, PDF: writePDF, Try: c.try, Fit: fitQuery}))
}

// snapshot computes the plan anew and names the files it came from.
func (c *serveCmd) snapshot(ctx context.Context, report func(plan.Progress)) (serve.Snapshot, []string, error) {
	files := append([]string{c.File}, c.Shelf...)
	piece, err := c.open()
	if err != nil {
		return serve.Snapshot{}, files, err
	}
	for _, f := range piece.Files {
		files = append(files, filepath.Join(filepath.Dir(c.File), filepath.FromSlash(f)))
	}
	p, err := plan.Options{Memory: &c.memory, Progress: report}.Compute(ctx, piece.Input)
	if err != nil {
		return serve.Snapshot{}, files, err
	}
	return serve.Snapshot{Plan: p, Drawings: drawing.All(p)}, files, nil
}

// An addressError is an address that cannot be listened on.
type addressError struct {
	address string
	err     error
}

// Error says which address and why.
func (e *addressError) Error() string { return fmt.Sprintf("listen on %s: %v", e.address, e.err) }

// Unwrap returns the cause.
func (e *addressError) Unwrap() error { return e.err }

// Hint says which address works.
func (e *addressError) Hint() string {
	return "another program may be there already; name another with --address 127.0.0.1:8471, or port 0 for a free one"
}
