package day

import "math"

// power counts the boxes, batteries and generators that circuits are.
func (n *needs) power() {
	for i := range n.setup.Circuits {
		c := &n.setup.Circuits[i]
		if item := n.kit.ItemOf(c.Item); item != nil {
			n.add(stocked(Power, item), 1, c.Name)
		}
	}
}

// usedUp counts what a rule of the kit says of what is used up: tape by the cable that is laid, foil by lights.
func (n *needs) usedUp() {
	lights := 0.0
	for i := range n.setup.Lights {
		lights += float64(n.setup.Lights[i].Count)
	}
	for _, item := range n.kit.Items {
		count := 0.0
		if item.PerCable > 0 {
			count += n.laid / item.PerCable
		}
		if item.PerLight > 0 {
			count += lights / item.PerLight
		}
		if count = math.Ceil(count - 1e-9); count > 0 {
			n.add(stocked(UsedUp, item), int(count), "")
		}
	}
}
