module github.com/satline/satline/internal/page/paper/commonmark

go 1.26.0

require (
	github.com/satline/satline v0.0.0
	github.com/yuin/goldmark v1.8.7
)

replace github.com/satline/satline => ../../../..
