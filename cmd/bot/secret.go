package main

import (
	"fmt"
	"log/slog"
)

// hidden is what every way of printing a [Secret] shows.
const hidden = "(hidden)"

// Secret is a token, a password or a key. However it is printed, logged or
// encoded, on its own or inside a struct, it shows a placeholder; only Reveal
// gives it away.
type Secret struct{ value string }

// NewSecret hides a value.
func NewSecret(value string) Secret { return Secret{value} }

// Reveal returns the value, for the one place that sends it.
func (s Secret) Reveal() string { return s.value }

// Set reports whether there is a value.
func (s Secret) Set() bool { return s.value != "" }

// String returns the placeholder.
func (Secret) String() string { return hidden }

// GoString returns the placeholder.
func (Secret) GoString() string { return hidden }

// Format prints the placeholder for every verb: without it, %d would print the
// fields of the struct.
func (Secret) Format(f fmt.State, _ rune) { fmt.Fprint(f, hidden) }

// LogValue returns the placeholder.
func (Secret) LogValue() slog.Value { return slog.StringValue(hidden) }

// MarshalText returns the placeholder.
func (Secret) MarshalText() ([]byte, error) { return []byte(hidden), nil }
