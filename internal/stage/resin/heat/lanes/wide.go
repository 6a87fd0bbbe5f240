//go:build amd64

package lanes

import "golang.org/x/sys/cpu"

var wide = cpu.X86.HasAVX2
