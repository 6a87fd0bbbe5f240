// Package cli is the command line: it reads files, calls the plan and hands the
// result to a renderer. Exit codes: 0 fine, 1 error, 2 usage, 3 the plan has stop
// findings.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"github.com/alecthomas/kong"

	"pourwright/internal/finding"
	"pourwright/internal/material"
	"pourwright/internal/plan"
	"pourwright/internal/read"
)

// Exit codes.
const (
	exitFine  = 0
	exitError = 1
	exitUsage = 2
	exitStop  = 3
)

// Version is the program's version, set at build time for releases.
var Version = "0.1"

type commands struct {
	Plan    planCmd    `cmd:"" help:"Compute the plan of a piece and print it."`
	Pack    packCmd    `cmd:"" help:"Write the shop pack of a piece: PDF, drawings, lists."`
	Inspect inspectCmd `cmd:"" help:"List the outlines of a drawing, or the levels of a height map."`
	Serve   serveCmd   `cmd:"" help:"Open a piece in the web app on this machine."`
	Shelf   shelfCmd   `cmd:"" help:"List the cards on the shelf, print one, or fit a resin."`
	Schema  schemaCmd  `cmd:"" help:"Print the JSON Schema of a piece, a shelf or a plan."`
	Rules   rulesCmd   `cmd:"" help:"List every finding the program can make."`
	Version versionCmd `cmd:"" help:"Print the program's version."`
}

// console is where commands write.
type console struct {
	ctx      context.Context
	out, err io.Writer
}

// stopped is the outcome of a command that worked, on a plan with stop findings.
var errStopped = errors.New("the plan has stop findings")

// hinter is an error that knows what to do about itself.
type hinter interface{ Hint() string }

// Main runs one command line and returns the exit code.
func Main(args []string, out, errOut io.Writer) int {
	ctx, cancel := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer cancel()
	return run(ctx, args, out, errOut)
}

func run(ctx context.Context, args []string, out, errOut io.Writer) int {
	var cmds commands
	exited := -1
	parser, err := kong.New(&cmds, kong.Name("pourwright"),
		kong.Description("Plans a cast piece, concrete shell and resin basin, from its drawing to its delivery."),
		kong.Writers(out, errOut), kong.Exit(func(code int) { exited = code }), kong.UsageOnError(),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true}))
	if err != nil {
		fmt.Fprintln(errOut, "error:", err)
		return exitError
	}
	if len(args) == 0 {
		args = []string{"--help"}
	}
	kctx, err := parser.Parse(args)
	if exited >= 0 {
		return exited
	}
	if err != nil {
		fmt.Fprintf(errOut, "error: %v\nhint: pourwright --help lists the commands\n", err)
		return exitUsage
	}
	return outcome(kctx.Run(&console{ctx: ctx, out: out, err: errOut}), errOut)
}

// outcome prints an error with its hint and returns the exit code.
func outcome(err error, errOut io.Writer) int {
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errStopped):
		return exitStop
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(errOut, "error: stopped before the end; nothing was written")
		return exitError
	}
	fmt.Fprintln(errOut, "error:", err)
	var doc *read.DocumentError
	if errors.As(err, &doc) && len(doc.Findings) > 1 {
		for _, f := range doc.Findings[1:] {
			fmt.Fprintf(errOut, "error: %s: %s\n  hint: %s\n", f.Where, f.Text, f.Remedy)
		}
	}
	var h hinter
	if errors.As(err, &h) && h.Hint() != "" {
		fmt.Fprintln(errOut, "hint:", h.Hint())
	}
	return exitError
}

// A pieceArg is what every command on a piece takes.
type pieceArg struct {
	File  string   `arg:"" help:"The piece document (piece.yaml)." type:"path"`
	Shelf []string `help:"A shelf file of your own; may be given more than once." type:"path" placeholder:"FILE"`
}

// open reads the piece and its shelf.
func (a pieceArg) open() (*read.Piece, error) {
	shelf, err := openShelf(a.Shelf)
	if err != nil {
		return nil, err
	}
	info, err := os.Stat(a.File)
	if err != nil {
		return nil, &fileError{a.File, err}
	}
	if info.IsDir() {
		a.File = filepath.Join(a.File, "piece.yaml")
	}
	if ext := strings.ToLower(filepath.Ext(a.File)); slices.Contains([]string{".svg", ".png", ".nc"}, ext) {
		return nil, &fileError{a.File, errors.New("is a drawing or a program, no document; inspect looks at it")}
	}
	return read.Open(os.DirFS(filepath.Dir(a.File)), filepath.Base(a.File), shelf)
}

// compute reads the piece and computes its plan, showing on a terminal how far it is.
func (a pieceArg) compute(con *console) (*plan.Plan, error) {
	piece, err := a.open()
	if err != nil {
		return nil, err
	}
	show, wipe := progress(con.err)
	defer wipe()
	return plan.Options{Progress: show}.Compute(con.ctx, piece.Input)
}

// openShelf returns the program's own shelf extended by files, in order.
func openShelf(files []string) (material.Shelf, error) {
	shelf, err := material.Default()
	if err != nil {
		return shelf, err
	}
	for _, name := range files {
		data, err := readFile(name, read.MaxShelf)
		if err != nil {
			return shelf, err
		}
		if shelf, err = material.Read(filepath.Base(name), data, shelf); err != nil {
			return shelf, err
		}
	}
	return shelf, nil
}

// A fileError is a file that cannot be opened.
type fileError struct {
	name string
	err  error
}

// Error says which file and why.
func (e *fileError) Error() string {
	if errors.Is(e.err, os.ErrNotExist) {
		return fmt.Sprintf("open %s: no such file", e.name)
	}
	return fmt.Sprintf("open %s: %v", e.name, e.err)
}

// Hint says how to get a file that works.
func (e *fileError) Hint() string {
	return "give the path of a piece.yaml, or of a drawing for inspect; examples/ holds both"
}

// stopIf returns errStopped where p may not be worked from.
func stopIf(p *plan.Plan) error {
	if worst, any := finding.Worst(p.Findings); any && worst == finding.Stop {
		return errStopped
	}
	return nil
}
