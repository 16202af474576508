package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"time"
)

// toRoot goes to the folder of go.mod, so that tasks work from anywhere below.
func toRoot() error {
	dir, err := os.Getwd()
	if err != nil {
		return err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return os.Chdir(dir)
		}
		up := filepath.Dir(dir)
		if up == dir {
			return errors.New("no go.mod here or above: run it inside the project")
		}
		dir = up
	}
}

// step runs one piece of work and shows its name and time.
func step(about string, work func() error) error {
	fmt.Printf("==> %s\n", about)
	start := time.Now()
	err := work()
	if err != nil {
		return fmt.Errorf("%s: %w", about, err)
	}
	fmt.Printf("    done in %.1f s\n", time.Since(start).Seconds())
	return nil
}

// command prepares a child process that speaks to this terminal.
func command(ctx context.Context, dir string, env []string, name string, args ...string) *exec.Cmd {
	c := exec.CommandContext(ctx, name, args...)
	c.Dir, c.Stdout, c.Stderr = dir, os.Stdout, os.Stderr
	c.Env = append(os.Environ(), env...)
	return c
}

// runIn runs a program in a folder.
func runIn(ctx context.Context, dir, name string, args ...string) error {
	return runEnv(ctx, dir, nil, name, args...)
}

func runEnv(ctx context.Context, dir string, env []string, name string, args ...string) error {
	if _, err := exec.LookPath(name); err != nil {
		return fmt.Errorf("%s is not installed: install it and run this again", name)
	}
	return command(ctx, dir, env, name, args...).Run()
}

// newer tells whether out is missing or older than any of the inputs (files or
// folders, walked).
func newer(out string, inputs ...string) bool {
	have, err := os.Stat(out)
	if err != nil {
		return true
	}
	stale := false
	for _, in := range inputs {
		_ = filepath.WalkDir(in, func(path string, d os.DirEntry, err error) error {
			if err != nil || stale {
				return filepath.SkipAll
			}
			if d.IsDir() {
				if n := d.Name(); n == "node_modules" || n == "dist" || n == "generated" || n == "test-results" {
					return filepath.SkipDir
				}
				return nil
			}
			if i, err := d.Info(); err == nil && i.ModTime().After(have.ModTime()) {
				stale = true
			}
			return nil
		})
	}
	return stale
}

func copyFile(to, from string) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.Create(to)
	if err != nil {
		return err
	}
	if _, err := io.Copy(out, in); err != nil {
		out.Close()
		return err
	}
	return out.Close()
}
