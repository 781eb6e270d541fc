package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// guide is the page for contributors.
func guide(t *testing.T) string {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// TestGuideNamesTables holds that the guide names each table of the book.
func TestGuideNamesTables(t *testing.T) {
	_, after, _ := strings.Cut(guide(t), "## Tables\n")
	section, _, _ := strings.Cut(after, "\n## ")
	files, err := filepath.Glob(filepath.Join("..", "..", "internal", "store", "migrations", "*.sql"))
	if err != nil || len(files) == 0 {
		t.Fatal("no migrations", err)
	}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`CREATE TABLE (\w+)`).FindAllStringSubmatch(string(raw), -1) {
			if !strings.Contains(section, "`"+m[1]+"`") {
				t.Errorf("the guide says nothing of the table %s", m[1])
			}
		}
	}
}

// TestGuideNamesRooms holds that the guide's table of rooms names each room that there
// is, and each package of sums.
func TestGuideNamesRooms(t *testing.T) {
	section, _, _ := strings.Cut(guide(t), "`cmd/bot/imports_test.go` holds this table.")
	rows := regexp.MustCompile(`(?m)^\| .*`).FindAllString(section, -1)
	named := strings.Join(rows, "\n")
	for _, pattern := range []string{"internal/*", "internal/calc/*", "internal/chat/*"} {
		folders, err := filepath.Glob(filepath.Join("..", "..", filepath.FromSlash(pattern)))
		if err != nil {
			t.Fatal(err)
		}
		for _, folder := range folders {
			name := filepath.Base(folder)
			info, err := os.Stat(folder)
			if err != nil {
				t.Fatal(err)
			}
			if info.IsDir() && name != "testdata" && !strings.HasSuffix(name, "test") && !regexp.MustCompile(`\b`+name+`\b`).MatchString(named) {
				t.Errorf("the guide's table says nothing of %s", folder)
			}
		}
	}
}
