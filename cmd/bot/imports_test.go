package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "ryebell"

// room is a row of the table of arrows: a folder, with all below it, and which of
// our folders it may import beside itself.
type room struct {
	folder string
	may    []string
	pure   purity
}

// purity says whether a room reads clocks, files and networks.
type purity uint8

const (
	effects purity = iota + 1
	pure
)

// rooms is the table. The longest folder that fits a package is its room. Helpers
// of tests (storetest and the like) live below their room and may import it.
func rooms() []room {
	return []room{
		{"cmd/bot", []string{"internal"}, effects},
		{"internal/calc", nil, pure},
		{"internal/kitchen", []string{"internal/calc"}, pure},
		{"internal/chat", nil, effects},
		{"internal/chat/phrase", []string{"internal/kitchen", "internal/calc"}, pure},
		{"internal/chat/wording", []string{"internal/chat", "internal/chat/phrase", "internal/kitchen", "internal/calc"}, pure},
		{"internal/chat/picture", []string{"internal/kitchen", "internal/calc"}, pure},
		{"internal/store", []string{"internal/kitchen", "internal/calc"}, effects},
		{"internal/reminders", []string{"internal/store", "internal/kitchen"}, effects},
		{"internal/chat/answer", []string{
			"internal/chat", "internal/chat/phrase", "internal/chat/wording",
			"internal/chat/picture", "internal/kitchen", "internal/store",
		}, effects},
		{"internal/chat/outbox", []string{"internal/chat", "internal/store"}, effects},
		{"internal/chat/telegram", []string{"internal/chat"}, effects},
		{"internal/chat/matrix", []string{"internal/chat"}, effects},
		{"internal/chat/console", []string{"internal/chat"}, effects},
		{"internal/chat/rehearse", []string{"internal/chat"}, effects},
		// Helpers of tests that need more than the room they lie in, or no room at all.
		{"internal/calc/calctest", nil, effects},
		{"internal/calc/cooling/coolingtest", []string{"internal/calc"}, effects},
		{"internal/ordeal", []string{"internal"}, effects},
	}
}

// only lists what belongs to one room alone.
func only() map[string]string {
	return map[string]string{
		"database/sql":                 "internal/store",
		"modernc.org/sqlite":           "internal/store",
		"gonum.org/v1/gonum":           "internal/calc",
		"github.com/robfig/cron":       "internal/reminders",
		"golang.org/x/term":            "internal/chat/console",
		"golang.org/x/sync/errgroup":   "cmd/bot",
		"github.com/hbollon/go-edlib":  "internal/chat/phrase, cmd/bot",
		"github.com/ergochat/readline": "internal/chat/console",
		"golang.org/x/image":           "internal/chat/picture",
	}
}

// impure lists the packages of the standard library that reach outside, or give
// another answer the next time.
func impure() []string {
	return []string{"os", "net", "database", "syscall", "log", "context", "math/rand", "runtime", "crypto/rand", "io/ioutil"}
}

// clock lists the functions of package time that read or wait for a clock.
func clock() []string {
	return []string{"Now", "Since", "Until", "After", "AfterFunc", "Sleep", "Tick", "NewTimer", "NewTicker"}
}

// within reports whether a package is a folder or below it.
func within(pkg, folder string) bool { return pkg == folder || strings.HasPrefix(pkg, folder+"/") }

// roomOf is the room that a package belongs to.
func roomOf(pkg string) (room, bool) {
	var best room
	for _, r := range rooms() {
		if within(pkg, r.folder) && len(r.folder) > len(best.folder) {
			best = r
		}
	}
	return best, best.folder != ""
}

// wrongs lists what is wrong with the imports and the clocks of one file.
func wrongs(pkg string, f *ast.File) []string {
	r, known := roomOf(pkg)
	if !known {
		return []string{pkg + " is in no room of the table"}
	}
	var bad []string
	for _, spec := range f.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return []string{err.Error()}
		}
		if why := wrongImport(r, imported); why != "" {
			bad = append(bad, fmt.Sprintf("%s imports %s: %s", pkg, imported, why))
		}
	}
	if r.pure == pure {
		bad = append(bad, clocks(pkg, f)...)
	}
	return bad
}

func wrongImport(r room, imported string) string {
	if ours, ok := strings.CutPrefix(imported, module+"/"); ok {
		to, known := roomOf(ours)
		switch {
		case !known:
			return "it is in no room of the table"
		case to.folder != r.folder && !slices.Contains(r.may, to.folder) && !slices.Contains(r.may, "internal"):
			return r.folder + " may not import " + to.folder
		}
		return ""
	}
	for lib, owner := range only() {
		if within(imported, lib) && !slices.Contains(strings.Split(owner, ", "), r.folder) {
			return "it belongs to " + owner
		}
	}
	for _, lib := range impure() {
		if r.pure == pure && within(imported, lib) {
			return r.folder + " is pure"
		}
	}
	return ""
}

// clocks lists the calls that read a clock. The package is looked for under the
// name that this file gives it.
func clocks(pkg string, f *ast.File) []string {
	name := ""
	for _, spec := range f.Imports {
		if spec.Path.Value != `"time"` {
			continue
		}
		if name = "time"; spec.Name != nil {
			name = spec.Name.Name
		}
	}
	if name == "." {
		return []string{pkg + " imports time with a dot"}
	}
	var bad []string
	ast.Inspect(f, func(n ast.Node) bool {
		if sel, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := sel.X.(*ast.Ident); ok && x.Name == name && slices.Contains(clock(), sel.Sel.Name) {
				bad = append(bad, fmt.Sprintf("%s uses time.%s and is pure", pkg, sel.Sel.Name))
			}
		}
		return true
	})
	return bad
}

// sources calls visit with the package and path of each Go file of the tree.
func sources(t *testing.T, visit func(pkg, file string)) {
	t.Helper()
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != root && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") || isModule(p)):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(p, ".go"):
			return nil
		}
		rel, err := filepath.Rel(root, p)
		if err != nil {
			return err
		}
		visit(path.Dir(filepath.ToSlash(rel)), p)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// isModule reports whether a folder is the root of another module.
func isModule(dir string) bool {
	_, err := os.Stat(filepath.Join(dir, "go.mod"))
	return err == nil
}

func TestArrows(t *testing.T) {
	seen := map[string]bool{}
	sources(t, func(pkg, file string) {
		if strings.HasSuffix(file, "_test.go") {
			// Tests import what they like, but lie in a room.
			if _, known := roomOf(pkg); !known {
				t.Errorf("%s: %s is in no room of the table", file, pkg)
			}
			return
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Errorf("read %s: %v", file, err)
			return
		}
		r, _ := roomOf(pkg)
		seen[r.folder] = true
		for _, bad := range wrongs(pkg, f) {
			t.Errorf("%s: %s", file, bad)
		}
	})
	for _, must := range []string{"cmd/bot", "internal/calc", "internal/kitchen", "internal/chat", "internal/store"} {
		if !seen[must] {
			t.Errorf("no file of %s was read", must)
		}
	}
}

// The checker finds what it is there for.
func TestArrowsCanFail(t *testing.T) {
	for _, c := range []struct{ pkg, src, want string }{
		{"internal/calc/steam", `import "ryebell/internal/kitchen"`, "internal/calc may not import internal/kitchen"},
		{"internal/chat", `import "ryebell/internal/store"`, "internal/chat may not import internal/store"},
		{"internal/chat/telegram", `import "ryebell/internal/kitchen"`, "internal/chat/telegram may not import internal/kitchen"},
		{"internal/kitchen", `import "ryebell/util"`, "it is in no room"},
		{"util", ``, "util is in no room"},
		{"internal/chat/answer", `import "database/sql"`, "it belongs to internal/store"},
		{"internal/reminders", `import _ "modernc.org/sqlite/lib"`, "it belongs to internal/store"},
		{"internal/kitchen", `import "os"`, "internal/kitchen is pure"},
		{"internal/chat/phrase", `import "net/url"`, "internal/chat/phrase is pure"},
		{"internal/calc/unit", `import "time"; var x = time.Now()`, "uses time.Now"},
		{"internal/chat/wording", `import clock "time"; func f() { clock.Sleep(1) }`, "uses time.Sleep"},
		{"internal/chat/wording", `import . "time"`, "with a dot"},
		{"internal/calc/unit", `import "time"; var x = time.UTC`, ""},
		{"internal/store/storetest", `import "ryebell/internal/store"`, ""},
		{"internal/calc/unit", `import "ryebell/internal/calc/calctest"`, "internal/calc may not import internal/calc/calctest"},
		{"internal/kitchen", `import "ryebell/internal/ordeal"`, "internal/kitchen may not import internal/ordeal"},
		{"internal/store", `import ("time"; "database/sql"); var x = time.Now()`, ""},
	} {
		f, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x; "+c.src, 0)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Join(wrongs(c.pkg, f), "\n")
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %s: got %q, want %q", c.pkg, c.src, got, c.want)
		}
	}
}
