module capscye

go 1.25.0

require pgregory.net/rapid v1.3.0
