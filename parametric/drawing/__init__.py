"""Parts and resolved numbers to sheets: lines, hatches, texts and dimensions on named layers."""
