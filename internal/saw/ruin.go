package saw

// ruin takes items out of one to three regions.
func (f *filler) ruin() {
	n := 1 + f.dice.below(3)
	for range min(n, len(f.regions)) {
		k := f.dice.below(len(f.regions))
		r := &f.regions[k]
		if r.root < 0 {
			continue
		}
		f.save(k)
		leaves := (len(r.parts) - len(r.spare) + 1) / 2
		switch draw := f.dice.below(4); {
		case draw == 0 && (leaves <= fewItems || f.dice.below(leaves) < fewItems/4):
			f.empty(r)
		case draw == 3:
			f.scatter(r, leaves)
		default:
			f.prune(r)
		}
	}
}

func (f *filler) empty(r *region) {
	for i := range r.parts {
		if r.parts[i].join == leaf {
			f.out = append(f.out, r.parts[i].item)
		}
	}
	r.clear()
}

// prune takes out every item under a part drawn at random.
func (f *filler) prune(r *region) {
	i := f.draw(r)
	if i == r.root {
		f.empty(r)
		return
	}
	f.fell(r, i)
	r.refresh()
}

func (f *filler) fell(r *region, i int32) {
	if p := r.parts[i]; p.join != leaf {
		f.fell(r, p.a)
		// What was part b is now where i was, or still p.b: its index is kept.
		f.fell(r, p.b)
		return
	}
	f.out = append(f.out, r.parts[i].item)
	r.remove(i)
}

// fewItems is how many items in a region are all taken out at once as a matter of
// course. Chosen.
const fewItems = 12

// scatter takes out each of the items with the same chance, some few of many.
func (f *filler) scatter(r *region, leaves int) {
	chance := min(0.1+0.4*f.dice.unit(), (1+fewItems*f.dice.unit())/float64(leaves))
	for i := range r.parts {
		if r.parts[i].join == leaf && f.dice.unit() < chance {
			f.out = append(f.out, r.parts[i].item)
			r.remove(int32(i))
		}
	}
	r.refresh()
}

func (f *filler) draw(r *region) int32 {
	for {
		if i := f.dice.below(len(r.parts)); r.parts[i].join != dead {
			return int32(i)
		}
	}
}

// step does one round at a temperature and reports whether all items are placed.
func (f *filler) step(temperature float64) bool {
	f.oldOut = append(f.oldOut[:0], f.out...)
	f.ruin()
	f.recreate()
	if len(f.out) == 0 {
		f.forget()
		return true
	}
	now := f.evaluate()
	if now > f.cost && now-f.cost > temperature*f.dice.exponential() {
		f.restore()
		return false
	}
	f.cost = now
	f.forget()
	return false
}
