// The program that owns the headers that tests share.
int main() {
  return 0;
}
