module capscye

go 1.25.0
