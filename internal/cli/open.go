package cli

import (
	"errors"
	"fmt"
	"os"
)

// readFile reads a whole file of at most most bytes. What is no plain file, such as a
// folder, a pipe or a device, is refused before it is opened, since opening it may wait
// for ever.
func readFile(name string, most int64) ([]byte, error) {
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, &fileError{name, err}
	case info.IsDir():
		return nil, &fileError{name, errors.New("is a folder")}
	case !info.Mode().IsRegular():
		return nil, &fileError{name, errNotPlain}
	case info.Size() > most:
		return nil, fmt.Errorf("read %s: larger than the limit of %d MiB", name, most>>20)
	}
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, &fileError{name, err}
	}
	return data, nil
}

var errNotPlain = errors.New("is a pipe or a device, no file")
