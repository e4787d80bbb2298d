"""The cards beside what closed visits ended in: what an author may want to think over."""
