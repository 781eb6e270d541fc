package main

import (
	"strings"
	"time"
)

// localZone is the time zone of this machine under its IANA name, which the book
// needs; UTC when the machine doesn't tell it.
func localZone(env environ, readlink func(string) (string, error)) *time.Location {
	name := strings.TrimPrefix(env.get("TZ"), ":")
	if name == "" {
		if link, err := readlink("/etc/localtime"); err == nil {
			_, name, _ = strings.Cut(link, "zoneinfo/")
		}
	}
	zone, err := time.LoadLocation(name)
	if err != nil || name == "Local" {
		return time.UTC
	}
	return zone
}
