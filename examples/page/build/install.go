package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
)

// installable writes what a browser needs to keep the page that it was served.
func installable(dir string, page []byte) error {
	worker, err := src.ReadFile("src/satline-sw.js")
	if err != nil {
		return err
	}
	manifest, err := json.MarshalIndent(map[string]any{
		"name": "Satline", "short_name": "Satline", "start_url": "./satline.html",
		"display": "standalone", "background_color": "#10222e", "theme_color": "#10222e",
		"icons": []map[string]string{
			{"src": "satline-icon.png", "sizes": "512x512", "type": "image/png"},
		},
	}, "", "  ")
	if err != nil {
		return err
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, icon(512)); err != nil {
		return err
	}
	version := fmt.Sprintf("%x", sha256.Sum256(page))[:12]
	for name, content := range map[string][]byte{
		"satline-sw.js":       []byte(strings.Replace(string(worker), "{{.Version}}", version, 1)),
		"satline.webmanifest": append(manifest, '\n'),
		"satline-icon.png":    picture.Bytes(),
	} {
		if err := os.WriteFile(filepath.Join(dir, name), content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// icon draws a saturation dome on a dark ground.
func icon(size int) image.Image {
	img := image.NewPaletted(image.Rect(0, 0, size, size),
		color.Palette{color.RGBA{0x10, 0x22, 0x2e, 0xff}, color.RGBA{0x7f, 0xd0, 0xff, 0xff}})
	for i := range 4 * size {
		x := 0.15 + 0.7*float64(i)/float64(4*size)
		y := 0.2 + 2.45*math.Pow(x-0.48, 2)*(1.6-0.6*x)*2
		for dx := -size / 28; dx <= size/28; dx++ {
			for dy := -size / 28; dy <= size/28; dy++ {
				if py := int(y*float64(size)) + dy; dx*dx+dy*dy <= size*size/784 &&
					py < size*17/20 {
					img.SetColorIndex(int(x*float64(size))+dx, py, 1)
				}
			}
		}
	}
	return img
}
