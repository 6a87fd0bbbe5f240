// Command pourwright plans a cast piece from its drawing to its delivery.
package main

import (
	"os"

	"pourwright/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], os.Stdout, os.Stderr)) }
