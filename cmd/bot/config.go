package main

import (
	"errors"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"syscall"

	"github.com/hbollon/go-edlib"
)

// prefix begins the name of every variable that is a setting.
const prefix = "RYEBELL_"

// config is what the environment sets.
type config struct {
	// Data is the folder of the book.
	Data string
	// Log is the level from which things are logged.
	Log slog.Level
}

// setting is one row of the table of settings: what --help shows of it and how
// it is read.
type setting struct {
	name, format, fallback, what string
	// secret settings can also be read from a file, named by the variable with
	// _FILE behind it.
	secret bool
	set    func(c *config, value string) error
}

// settings is the table of all settings.
func settings() []setting {
	return []setting{
		{
			name: prefix + "DATA", format: "folder", fallback: "the user's state folder",
			what: "where the book is kept",
			set:  func(c *config, v string) error { c.Data = v; return nil },
		},
		{
			name: prefix + "LOG", format: "debug, info, warn or error", fallback: "warn",
			what: "how much is logged, on standard error",
			set:  setLevel,
		},
	}
}

func setLevel(c *config, v string) error {
	levels := map[string]slog.Level{
		"debug": slog.LevelDebug, "info": slog.LevelInfo, "warn": slog.LevelWarn, "error": slog.LevelError,
	}
	level, known := levels[strings.ToLower(v)]
	if !known {
		return fmt.Errorf("%q is not a level: use debug, info, warn or error", v)
	}
	c.Log = level
	return nil
}

// environ is a process environment: NAME=value. A list and not a lookup, because
// a misspelt setting is found only by going through all names.
type environ []string

func (e environ) get(name string) string {
	for _, kv := range e {
		if k, v, ok := strings.Cut(kv, "="); ok && k == name {
			return v
		}
	}
	return ""
}

// configError is the error of settings that can't be used, all of them at once.
type configError struct{ error }

func (e configError) Unwrap() error { return e.error }

// loadConfig reads the settings from the environment, and secrets also from
// files. An empty value is the same as none. The error is a configError that
// names every variable that is wrong.
func loadConfig(env environ, readFile func(string) ([]byte, error)) (config, error) {
	c := config{Data: stateFolder(env), Log: slog.LevelWarn}
	err := readSettings(&c, settings(), env, readFile)
	if c.Data == "" {
		err = errors.Join(err, errors.New(prefix+"DATA: no home folder to keep the book in: set it to a folder"))
	}
	if err != nil {
		return config{}, configError{err}
	}
	return c, nil
}

func readSettings(c *config, table []setting, env environ, readFile func(string) ([]byte, error)) error {
	var wrong []error
	for _, s := range table {
		value, err := s.value(env, readFile)
		if err == nil && value != "" {
			err = s.set(c, value)
		}
		if err != nil {
			wrong = append(wrong, fmt.Errorf("%s: %w", s.name, err))
		}
	}
	return errors.Join(append(wrong, unknown(table, env)...)...)
}

// value is what the environment, or for a secret the file that it names, holds.
func (s setting) value(env environ, readFile func(string) ([]byte, error)) (string, error) {
	value := env.get(s.name)
	if !s.secret {
		return value, nil
	}
	file := env.get(s.name + "_FILE")
	switch {
	case file == "":
		return value, nil
	case value != "":
		return "", errors.New("set here and as " + s.name + "_FILE: unset one of them")
	}
	data, err := readFile(file)
	if err != nil {
		return "", fmt.Errorf("read its file: %w", err)
	}
	text := strings.TrimSuffix(strings.TrimSuffix(string(data), "\n"), "\r")
	if text == "" {
		return "", errors.New("its file is empty")
	}
	return text, nil
}

// unknown lists names that begin like a setting and are none.
func unknown(table []setting, env environ) []error {
	var names []string
	for _, s := range table {
		names = append(names, s.name)
		if s.secret {
			names = append(names, s.name+"_FILE")
		}
	}
	var wrong []error
	for _, kv := range env {
		name, _, _ := strings.Cut(kv, "=")
		if strings.HasPrefix(name, prefix) && !slices.Contains(names, name) {
			wrong = append(wrong, fmt.Errorf("%s: no such setting: did you mean %s?", name, nearest(name, names)))
		}
	}
	return wrong
}

// checkFolder refuses a data folder that can't be one. The error is a configError.
func checkFolder(folder string) error {
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() || errors.Is(err, syscall.ENOTDIR) {
		return configError{fmt.Errorf("%sDATA: %s is a file, or lies below one: set it to a folder, which may be new", prefix, folder)}
	}
	return nil // what else is wrong with it opening the book will tell
}

// nearest is the word that takes the fewest keystrokes to get to.
func nearest(word string, words []string) string {
	return slices.MinFunc(words, func(a, b string) int {
		return edlib.OSADamerauLevenshteinDistance(word, a) - edlib.OSADamerauLevenshteinDistance(word, b)
	})
}

// stateFolder is where a program keeps what it must not lose, for this user; it
// is empty when the user has no home.
func stateFolder(env environ) string {
	if dir := env.get("XDG_STATE_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "ryebell")
	}
	base, below := env.get("HOME"), filepath.Join(".local", "state")
	switch runtime.GOOS {
	case "windows":
		base, below = env.get("LOCALAPPDATA"), ""
	case "darwin":
		below = filepath.Join("Library", "Application Support")
	}
	if base == "" {
		return ""
	}
	return filepath.Join(base, below, "ryebell")
}
