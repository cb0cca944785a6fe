module stilewright

go 1.26
