#!/usr/bin/perl
# A second message centre for tests, on Net::SMPP, which has a codec of its own. It listens on this
# computer only and serves one session at a time. Arguments: port, system_id, password.
#
# After a good bind it sends one text, then one of two parts with the second part first (the header
# with an eight-bit reference), and answers each submit_sm with a decimal id and a receipt in the
# text form of SMPP 3.4, Appendix B, without any parameters.
use strict; use warnings; use Net::SMPP;
$| = 1;
my ($port, $user, $pass) = (@ARGV, 2776, 'esme', 'secret')[0..2];
my $srv = Net::SMPP->new_listen('127.0.0.1', port => $port, smpp_version => 0x34, interface_version => 0x34, addr_ton => 1, addr_npi => 1) or die "listen: $!";
print "centre pid $$ smpp 127.0.0.1:$port\n";
my $id = 5000;
while (my $s = $srv->accept) {
  $s->set_version(0x34);
  print "connect\n"; my $bound = 0;
  while (my $p = $s->read_pdu) {
    my $c = $p->{cmd};
    printf "got %s status %d seq %d\n", $p->{cmd_name} // sprintf('%08x', $c), $p->{status}, $p->{seq};
    if ($c == 9 || $c == 1 || $c == 2) {
      my $ok = ($p->{system_id} eq $user && $p->{password} eq $pass);
      my %r = (seq => $p->{seq}, system_id => 'perlsmsc', status => $ok ? 0 : 0x0E);
      $c == 9 ? $s->bind_transceiver_resp(%r) : $c == 1 ? $s->bind_receiver_resp(%r) : $s->bind_transmitter_resp(%r);
      printf "bind %s version %02x\n", ($ok ? 'ok' : 'refused'), $p->{interface_version};
      last unless $ok; $bound = 1;
      if ($c != 2) {
        my %mo = (source_addr_ton => 1, source_addr_npi => 1, source_addr => '447700900456', dest_addr_ton => 0, dest_addr_npi => 1, destination_addr => '12345', async => 1);
        $s->deliver_sm(%mo, short_message => 'maize 10');
        $s->deliver_sm(%mo, esm_class => 0x40, short_message => "\x05\x00\x03\x2a\x02\x02" . 'second half');
        $s->deliver_sm(%mo, esm_class => 0x40, short_message => "\x05\x00\x03\x2a\x02\x01" . 'first half, ');
      }
    } elsif ($c == 4) {
      $id++; printf "submit_sm to %s esm %02x dc %d len %d hex %s\n", $p->{destination_addr}, $p->{esm_class}, $p->{data_coding}, length($p->{short_message}), unpack('H24', $p->{short_message});
      $s->submit_sm_resp(seq => $p->{seq}, message_id => $id);
      if ($p->{registered_delivery} & 1) {
        my @t = gmtime; my $d = sprintf('%02d%02d%02d%02d%02d', $t[5] % 100, $t[4] + 1, @t[3,2,1]);
        $s->deliver_sm(async => 1, esm_class => 0x04, source_addr_ton => 1, source_addr_npi => 1, source_addr => $p->{destination_addr}, destination_addr => $p->{source_addr},
          short_message => "id:$id sub:001 dlvrd:001 submit date:$d done date:$d stat:DELIVRD err:000 text:");
      }
    } elsif ($c == 0x15) { $s->enquire_link_resp(seq => $p->{seq}); }
    elsif ($c == 6) { $s->unbind_resp(seq => $p->{seq}); last; }
  }
  close $s; print "closed\n";
}
