// Licenses prints the licence of every module that the project builds or tests
// with, and fails where one is missing or not known.
package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "licenses:", err)
		os.Exit(1)
	}
}

func run() error {
	list := exec.Command(
		"go", "list", "-deps", "-test", "-f",
		`{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}`, "./...",
	)
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return fmt.Errorf("go list: %w", err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	slices.Sort(lines)
	var problems []error
	for _, line := range slices.Compact(lines) {
		module, rest, _ := strings.Cut(line, " ")
		version, dir, ok := strings.Cut(rest, " ")
		if !ok {
			continue
		}
		name, err := licenseIn(dir)
		if err != nil {
			problems = append(problems, fmt.Errorf("%s: %w", module, err))
			continue
		}
		fmt.Printf("%-14s %s %s\n", name, module, version)
	}
	return errors.Join(problems...)
}

// marks are sentences by which a licence is known.
var marks = []struct{ name, mark string }{
	{"Apache-2.0", "Apache License"}, {"OFL-1.1", "SIL Open Font License"},
	{"MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy"},
	{"BSD", "Redistribution and use in source and binary forms"}, {"FTL", "FreeType"},
	{"CC-BY-4.0", "Creative Commons Attribution 4.0 International"},
	{"MPL-2.0", "Mozilla Public License Version 2.0"},
}

func licenseIn(dir string) (string, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*LICENSE*"))
	if err != nil {
		return "", err
	}
	more, err := filepath.Glob(filepath.Join(dir, "*COPYING*"))
	if err != nil {
		return "", err
	}
	for _, f := range append(files, more...) {
		text, err := os.ReadFile(f)
		if err != nil {
			return "", err
		}
		text = bytes.Join(bytes.Fields(text), []byte(" "))
		for _, m := range marks {
			if bytes.Contains(text, []byte(m.mark)) {
				return m.name, nil
			}
		}
	}
	return "", errors.New("no known licence found")
}
