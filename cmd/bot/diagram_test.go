package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ryebell/internal/kitchen"
)

// TestDiagram holds the state diagram in the guide against the table that the
// code uses. With -update it rewrites the guide's.
func TestDiagram(t *testing.T) {
	path := filepath.Join("..", "..", "DEVELOPERS.md")
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(raw), "```mermaid\n")
	drawn, after, closed := strings.Cut(rest, "```\n")
	if !ok || !closed {
		t.Fatal("the guide has no diagram")
	}
	if drawn == kitchen.Diagram() {
		return
	}
	if !*update {
		t.Fatal("the guide's diagram is not the code's: go test ./cmd/bot -run Diagram -update")
	}
	text := before + "```mermaid\n" + kitchen.Diagram() + "```\n" + after
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
