package main

import (
	"errors"
	"io/fs"
	"log/slog"
	"path/filepath"
	"strings"
	"testing"
)

func noFile(string) ([]byte, error) { return nil, fs.ErrNotExist }

func TestLoadConfig(t *testing.T) {
	home := t.TempDir()
	def := config{Data: stateFolder(environ{"HOME=" + home, "LOCALAPPDATA=" + home}), Log: slog.LevelWarn}
	for _, c := range []struct {
		name string
		env  []string
		want config
	}{
		{"nothing set", nil, def},
		{"others' variables", []string{"RYE=1", "PATH=/bin"}, def},
		{"empty is not set", []string{"RYEBELL_DATA=", "RYEBELL_LOG="}, def},
		{"state folder", []string{"XDG_STATE_HOME=" + home}, config{filepath.Join(home, "ryebell"), slog.LevelWarn}},
		{"relative state folder is ignored", []string{"XDG_STATE_HOME=here"}, def},
		{"data", []string{"RYEBELL_DATA=/srv/book"}, config{"/srv/book", slog.LevelWarn}},
		{"log", []string{"RYEBELL_LOG=Debug"}, config{def.Data, slog.LevelDebug}},
		{"value with an equals sign", []string{"RYEBELL_DATA=/srv/a=b"}, config{"/srv/a=b", slog.LevelWarn}},
	} {
		t.Run(c.name, func(t *testing.T) {
			env := append(environ{"HOME=" + home, "LOCALAPPDATA=" + home}, c.env...)
			got, err := loadConfig(env, noFile)
			if err != nil || got != c.want {
				t.Errorf("loadConfig(%q) = %+v, %v, want %+v", c.env, got, err, c.want)
			}
		})
	}
}

func TestLoadConfigErrors(t *testing.T) {
	for _, c := range []struct {
		name string
		env  environ
		want []string
	}{
		{"level", environ{"HOME=/h", "LOCALAPPDATA=/h", "RYEBELL_LOG=loud"}, []string{`RYEBELL_LOG: "loud" is not a level: use debug, info, warn or error`}},
		{"misspelt", environ{"HOME=/h", "LOCALAPPDATA=/h", "RYEBELL_DTA=/x"}, []string{"RYEBELL_DTA: no such setting: did you mean RYEBELL_DATA?"}},
		{"no home", environ{}, []string{"RYEBELL_DATA: no home folder"}},
		{
			"all at once",
			environ{"RYEBELL_LOGS=info", "RYEBELL_LOG=loud", "RYEBELL_DATTA=/x"},
			[]string{"RYEBELL_LOG:", "RYEBELL_LOGS: no such setting: did you mean RYEBELL_LOG?", "RYEBELL_DATTA:", "RYEBELL_DATA: no home"},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := loadConfig(c.env, noFile)
			if !errors.As(err, new(configError)) {
				t.Fatalf("got %v, want a configError", err)
			}
			for _, want := range c.want {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q is missing in:\n%v", want, err)
				}
			}
		})
	}
}

// A secret comes from the variable or from the file that its _FILE variable
// names, never from both.
func TestSecretSettings(t *testing.T) {
	var got string
	table := []setting{{
		name: "RYEBELL_TOKEN", secret: true,
		set: func(_ *config, v string) error { got = v; return nil },
	}}
	files := map[string]string{"good": "abc\n", "two": "abc\n\n", "windows": "abc\r\n", "empty": "\n"}
	read := func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, fs.ErrNotExist
		}
		return []byte(text), nil
	}
	for _, c := range []struct {
		name      string
		env       environ
		want, err string
	}{
		{"variable", environ{"RYEBELL_TOKEN=abc"}, "abc", ""},
		{"file", environ{"RYEBELL_TOKEN_FILE=good"}, "abc", ""},
		{"one line end is trimmed", environ{"RYEBELL_TOKEN_FILE=two"}, "abc\n", ""},
		{"line end of two bytes", environ{"RYEBELL_TOKEN_FILE=windows"}, "abc", ""},
		{"both", environ{"RYEBELL_TOKEN=abc", "RYEBELL_TOKEN_FILE=good"}, "", "unset one of them"},
		{"no file", environ{"RYEBELL_TOKEN_FILE=none"}, "", "RYEBELL_TOKEN: read its file"},
		{"empty file", environ{"RYEBELL_TOKEN_FILE=empty"}, "", "its file is empty"},
		{"nearest", environ{"RYEBELL_TOKEN_FLE=good"}, "", "did you mean RYEBELL_TOKEN_FILE?"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got = ""
			err := readSettings(new(config), table, c.env, read)
			switch {
			case c.err == "" && err != nil, c.err != "" && (err == nil || !strings.Contains(err.Error(), c.err)):
				t.Errorf("got error %v, want %q", err, c.err)
			case got != c.want:
				t.Errorf("got %q, want %q", got, c.want)
			}
		})
	}
}
