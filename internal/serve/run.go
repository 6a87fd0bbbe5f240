package serve

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"
)

// Limits of one connection.
const (
	headerLimit  = 5 * time.Second
	answerLimit  = 60 * time.Second // a large pack on a slow machine; streams set their own
	closingLimit = 3 * time.Second
	headerBytes  = 64 << 10
)

// Run serves h on l until ctx ends, then lets streams say goodbye and closes. It
// returns nil after an orderly end.
func Run(ctx context.Context, l net.Listener, h http.Handler) error {
	s := &http.Server{
		Handler: h, ReadHeaderTimeout: headerLimit, WriteTimeout: answerLimit, MaxHeaderBytes: headerBytes,
		BaseContext: func(net.Listener) context.Context { return ctx },
	}
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	select {
	case err := <-done:
		return fmt.Errorf("serve on %s: %w", l.Addr(), err)
	case <-ctx.Done():
	}
	closing, cancel := context.WithTimeout(context.WithoutCancel(ctx), closingLimit)
	defer cancel()
	if err := s.Shutdown(closing); err != nil {
		_ = s.Close() // a reader that does not let go is cut off
	}
	if err := <-done; !errors.Is(err, http.ErrServerClosed) {
		return fmt.Errorf("serve on %s: %w", l.Addr(), err)
	}
	return nil
}

// URL returns the address to open for a listener.
func URL(a net.Addr) string {
	host, port, err := net.SplitHostPort(a.String())
	if err != nil {
		return "http://" + a.String() + "/"
	}
	if ip := net.ParseIP(host); ip != nil && ip.IsUnspecified() {
		host = "localhost"
	}
	return "http://" + net.JoinHostPort(host, port) + "/"
}
