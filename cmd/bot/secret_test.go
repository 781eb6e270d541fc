package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"strings"
	"testing"
)

// A secret inside a config stays hidden, however the config is printed. Fields
// that Go prints by reflection alone are unexported ones, so both are here.
func TestSecretNeverShows(t *testing.T) {
	const value = "tok-41c7"
	c := struct {
		Name  string
		Token Secret
		own   Secret
		ptr   *Secret
	}{Name: "bot", Token: NewSecret(value), own: NewSecret(value)}
	c.ptr = &c.Token

	var out bytes.Buffer
	for _, verb := range []string{"%v", "%+v", "%#v", "%s", "%q", "%x", "%X", "%d", "%t"} {
		fmt.Fprintf(&out, verb+" "+verb+" "+verb+"\n", c.Token, &c.Token, c.ptr)
		fmt.Fprintf(&out, verb+"\n", struct{ Token Secret }{c.Token})
		fmt.Fprintf(&out, verb+"\n", []Secret{c.Token})
		fmt.Fprintf(&out, verb+"\n", map[string]Secret{"token": c.Token})
	}
	fmt.Fprint(&out, c.Token, fmt.Errorf("send with %v: %w", c.Token, errors.New("refused")))
	text, json1 := slog.New(slog.NewTextHandler(&out, nil)), slog.New(slog.NewJSONHandler(&out, nil))
	for _, log := range []*slog.Logger{text, json1} {
		log.Info("config", "token", c.Token, "ptr", c.ptr, "all", struct{ Token Secret }{c.Token})
	}
	if err := json.NewEncoder(&out).Encode(c); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(out.String(), value) || strings.Contains(out.String(), fmt.Sprintf("%x", value)) {
		t.Errorf("the secret shows in:\n%s", out.String())
	}
	if got := c.own.Reveal(); got != value {
		t.Errorf("Reveal gave %q, want %q", got, value)
	}
}
