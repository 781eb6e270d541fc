package kitchen

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"ryebell/internal/calc/unit"
)

// sample is a file of testdata/entries: an entry as some version wrote it. The
// files are never changed and never removed.
type sample struct {
	Kind    string          `json:"kind"`
	Version int             `json:"version"`
	Body    json.RawMessage `json:"body"`
}

func samples(t *testing.T) map[string]Stored {
	t.Helper()
	paths, err := filepath.Glob("testdata/entries/*.json")
	if err != nil {
		t.Fatal(err)
	}
	all := make(map[string]Stored, len(paths))
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		var s sample
		if err := json.Unmarshal(text, &s); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		var body bytes.Buffer
		if err := json.Compact(&body, s.Body); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		all[name(s.Kind, s.Version)] = Stored{Kind: s.Kind, Version: s.Version, Body: body.Bytes()}
	}
	return all
}

func name(kind string, version int) string { return fmt.Sprintf("%s version %d", kind, version) }

func TestSamplesDecodeForEver(t *testing.T) {
	for name, s := range samples(t) {
		e, err := Decode(s)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		again, err := Encode(e)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if again.Kind == s.Kind && again.Version == s.Version && !bytes.Equal(again.Body, s.Body) {
			t.Errorf("%s encodes as\n%s, want\n%s", name, again.Body, s.Body)
		}
	}
}

func TestEveryKindHasItsSample(t *testing.T) {
	have := samples(t)
	for _, c := range codecs {
		s, ok := have[name(c.kind, c.version)]
		if !ok {
			t.Errorf("testdata/entries has no %s", name(c.kind, c.version))
			continue
		}
		e, err := Decode(s)
		if err != nil {
			t.Errorf("%s: %v", name(c.kind, c.version), err)
			continue
		}
		v := reflect.ValueOf(e)
		for i := range v.NumField() {
			if v.Field(i).IsZero() {
				t.Errorf("the sample of %s leaves out %s", c.kind, v.Type().Field(i).Name)
			}
		}
	}
}

func TestKindsAreDistinct(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range codecs {
		if seen[name(c.kind, c.version)] {
			t.Errorf("%s occurs twice", name(c.kind, c.version))
		}
		seen[name(c.kind, c.version)] = true
	}
}

func TestEveryEntryHasACodec(t *testing.T) {
	types := entryTypes(t)
	if len(types) < 20 {
		t.Fatalf("found only %d types of entries: %v", len(types), types)
	}
	for _, typ := range types {
		if !slices.ContainsFunc(codecs, func(c codec) bool { return c.shape.Name() == typ }) {
			t.Errorf("%s is an Entry and has no codec", typ)
		}
	}
}

// entryTypes reads from the source which types have the method that makes them
// entries.
func entryTypes(t *testing.T) (types []string) {
	t.Helper()
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			f, ok := d.(*ast.FuncDecl)
			if !ok || f.Recv == nil || f.Name.Name != "entry" {
				continue
			}
			if id, ok := f.Recv.List[0].Type.(*ast.Ident); ok {
				types = append(types, id.Name)
			} else {
				t.Errorf("%s: an entry must be a value", path)
			}
		}
	}
	return types
}

func TestDecodeRefuses(t *testing.T) {
	for _, tt := range []struct {
		name    string
		in      Stored
		unknown bool
	}{
		{"unknown kind", Stored{Kind: "teapot", Version: 1, Body: []byte(`{}`)}, true},
		{"later version", Stored{Kind: "struck", Version: 2, Body: []byte(`{"no":1}`)}, true},
		{"unknown field", Stored{Kind: "struck", Version: 1, Body: []byte(`{"no":1,"why":"x"}`)}, false},
		{"two values", Stored{Kind: "struck", Version: 1, Body: []byte(`{"no":1}{}`)}, false},
		{"half a value", Stored{Kind: "struck", Version: 1, Body: []byte(`{"no":`)}, false},
	} {
		e, err := Decode(tt.in)
		if err == nil || errors.Is(err, ErrUnknownKind) != tt.unknown {
			t.Errorf("%s: got %v, %v", tt.name, e, err)
		}
	}
}

func TestEncodeRefusesWhatIsNoNumber(t *testing.T) {
	if s, err := Encode(Elevation{Height: unit.Metres(math.NaN())}); err == nil {
		t.Errorf("encoded NaN as %s", s.Body)
	}
}

func TestEntriesComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := CookerIs{
			Name:     rapid.String().Draw(t, "name"),
			MaxGauge: unit.GaugeKPa(rapid.Float64().Draw(t, "kPa")),
			Pot:      unit.Litres(rapid.Float64().Draw(t, "litres")),
			Gauge:    rapid.SampledFrom([]GaugeKind{0, Dial, Weight}).Draw(t, "gauge"),
		}
		checkComesBack(t, e)
		checkComesBack(t, HoldIs{Hold: time.Duration(rapid.Int64().Draw(t, "hold"))})
	})
}

func checkComesBack(t *rapid.T, e Entry) {
	s, err := Encode(e)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Decode(s)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, e) {
		t.Fatalf("%#v came back as %#v", e, got)
	}
}

// FuzzDecode: nothing panics, and what decodes comes back from its own stored
// form.
func FuzzDecode(f *testing.F) {
	for _, c := range codecs {
		f.Add(c.kind, c.version, []byte(`{}`))
	}
	f.Add("cooker", 1, []byte(`{"name":"big pot","takes":[{"count":7,"container":{"vessel":1,"litres":0.9}}]}`))
	f.Fuzz(func(t *testing.T, kind string, version int, body []byte) {
		e, err := Decode(Stored{Kind: kind, Version: version, Body: body})
		if err != nil {
			return
		}
		s, err := Encode(e)
		if err != nil {
			t.Fatalf("%#v decoded and doesn't encode: %v", e, err)
		}
		again, err := Decode(s)
		if err != nil {
			t.Fatalf("%s doesn't decode: %v", s.Body, err)
		}
		s2, err := Encode(again)
		if err != nil || !bytes.Equal(s.Body, s2.Body) {
			t.Fatalf("%s became %s, %v", s.Body, s2.Body, err)
		}
	})
}
