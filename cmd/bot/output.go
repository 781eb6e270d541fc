package main

import (
	"fmt"
	"io"
	"sync"
)

// output is what the program prints to. It remembers that something could not be
// printed, so that the program does not end as if it had been.
type output struct {
	to io.Writer

	mu     sync.Mutex
	failed error
}

func (o *output) Write(p []byte) (int, error) {
	n, err := o.to.Write(p)
	if err != nil {
		o.mu.Lock()
		defer o.mu.Unlock()
		if o.failed == nil {
			o.failed = fmt.Errorf("the output can't be written: %w", err)
		}
	}
	return n, err
}

// failure is the first error of writing; nil if all was written.
func (o *output) failure() error {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.failed
}
