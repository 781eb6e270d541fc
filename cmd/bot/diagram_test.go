package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"ryebell/internal/kitchen"
)

// TestDiagram holds the state diagrams in the guide against the tables that the
// code uses. With -update it rewrites the guide's.
func TestDiagram(t *testing.T) {
	path := filepath.Join("..", "..", "DEVELOPERS.md")
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	for heading, diagram := range map[string]string{"## The stages of a run\n": kitchen.Diagram(), "## The states of a unit\n": kitchen.UnitDiagram()} {
		above, section, found := strings.Cut(text, heading)
		before, rest, opened := strings.Cut(section, "```mermaid\n")
		drawn, after, closed := strings.Cut(rest, "```\n")
		if !found || !opened || !closed {
			t.Fatalf("the guide has no diagram under %q", heading)
		}
		if drawn != diagram && !*update {
			t.Fatalf("the guide's diagram under %q is not the code's: go test ./cmd/bot -run Diagram -update", heading)
		}
		text = above + heading + before + "```mermaid\n" + diagram + "```\n" + after
	}
	if text == string(raw) {
		return
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
