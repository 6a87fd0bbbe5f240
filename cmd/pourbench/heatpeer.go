package main

import "context"

func (b *heatBench) peers(ctx context.Context) error { return nil }
